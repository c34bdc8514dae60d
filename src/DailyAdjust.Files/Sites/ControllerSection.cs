using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>controllers: the boxes, their dials and their programs.</summary>
internal static class ControllerSection
{
    public static (IReadOnlyList<Controller> Controllers, IReadOnlyDictionary<ProgramKey, YamlNode> ProgramsAt) ReadAll(Section root, IReadOnlyList<Gauge> gauges)
    {
        var sections = root.NeedMaps("controllers");
        var programsAt = new Dictionary<ProgramKey, YamlNode>();
        Controller[] controllers = [.. sections.Select((s, i) => Read(s, i + 1, programsAt, gauges))];
        Names.CheckUnique(controllers.Zip(sections, (c, s) => (c.Id, s.KeyOf("id"))), "controller", root.Problems);
        foreach (var same in sections.Zip(controllers).GroupBy(c => c.Second.Route).Where(g => g.Count() > 1))
        {
            var at = same.ElementAt(1).First.KeyOf("route");
            root.Problems.Warn(at.Line, at.Column, FormattableString.Invariant($"{Wording.AllOf([.. same.Select(c => c.Second.Id)])} have the same place {same.Key} on the route"), "they are walked in the order of this file");
        }

        return (controllers, programsAt);
    }

    private static Controller Read(Section section, int order, Dictionary<ProgramKey, YamlNode> programsAt, IReadOnlyList<Gauge> gauges)
    {
        var id = section.NeedId("C1");
        var programs = section.NeedMaps("programs").Select(p => (Section: p, Program: ProgramSection.Read(p))).ToList();
        Names.CheckUnique(programs.Select(p => (p.Program.Id, p.Section.KeyOf("id"))), "program", section.Problems);
        foreach (var (programSection, program) in programs)
        {
            programsAt.TryAdd(new(id, program.Id), programSection.KeyOf("id"));
        }

        var controller = new Controller
        {
            Id = id,
            Place = section.Text("place", ""),
            Route = section.Whole("route", 0, 100_000) ?? order,
            Overlap = section.Word("overlap", "together", "stack") is "stack" ? ProgramOverlap.Stack : ProgramOverlap.Together,
            StationGap = TimeSpan.FromMinutes(section.Quantity("station_gap", UnitKind.Duration, new(0, 60)) ?? 0),
            PauseDays = PauseDays(section),
            RainSwitch = RainSwitchSection.Read(section.Map("rain_switch"), gauges),
            LeastRunMinutes = section.Quantity("min_run", UnitKind.Duration, new(0, 60)) ?? 3,
            ClockStaysStandard = section.Word("clock", "moved_by_hand", "standard") is "standard",
            Programs = [.. programs.Select(p => p.Program)],
        };
        controller = WithMinutes(WithPercent(controller, section.NeedMap("percent", "{ applies: program, min: 0 %, max: 200 %, step: 5 % }")), section.Map("minutes"));
        section.Done();
        return controller;
    }

    private static Controller WithPercent(Controller controller, Section? percent)
    {
        if (percent is null)
        {
            return controller;
        }

        var applies = percent.NeedWord("applies", "program", "controller", "none");
        var none = applies is "none";
        var max = Size(percent, "max", none ? null : "200 %");
        var step = Size(percent, "step", none ? null : "5 %");
        var with = controller with
        {
            Applies = none ? PercentApplies.None : applies is "controller" ? PercentApplies.Controller : PercentApplies.Program,
            PercentMin = percent.Quantity("min", UnitKind.Percent, new(0, Setting.LargestPercent)) ?? 0,
            PercentMax = max ?? (none ? Setting.LargestPercent : controller.PercentMax),
            ShowsChange = percent.Word("shows", "percent", "change") is "change",
            PercentStep = step ?? controller.PercentStep,
        };
        percent.Done();
        if (with.PercentMin >= max)
        {
            var at = percent.KeyOf("max");
            percent.Problems.Error(at.Line, at.Column, $"{percent.Name}: max {Wording.Number(with.PercentMax)} % is not above min {Wording.Number(with.PercentMin)} %", "write the range that the dial can show");
        }
        else if (step > with.PercentMax - with.PercentMin)
        {
            var at = percent.Find("step")!;
            percent.Problems.Error(at.Line, at.Column, $"{percent.Name}: a step of {Wording.Number(step.Value)} % leads past the dial's end, from {Wording.Number(with.PercentMin)} to {Wording.Number(with.PercentMax)} %", "write by how much the dial changes from one number to the next");
        }

        return with;
    }

    /// <param name="example">How to write it where it must be there; null = it may be left out.</param>
    private static double? Size(Section percent, string key, string? example) => example is null || percent.Need(key, example) is not null
        ? percent.Quantity(key, UnitKind.Percent, new(0, Setting.LargestPercent, AboveMin: true))
        : null;

    private static Controller WithMinutes(Controller controller, Section? minutes)
    {
        if (minutes is null)
        {
            return controller;
        }

        var with = controller with
        {
            MinutesStep = minutes.Quantity("step", UnitKind.Duration, new(0, 60, AboveMin: true)) ?? 1,
            Rounding = minutes.Word("rounding", "nearest", "down", "up") switch
            {
                "down" => MinutesRounding.Down,
                "up" => MinutesRounding.Up,
                _ => MinutesRounding.Nearest,
            },
        };
        minutes.Done();
        return with;
    }

    private static int PauseDays(Section section)
    {
        if (section.Quantity("pause", UnitKind.Duration, new(0, 366 * 1440)) is not { } minutes)
        {
            return 0;
        }

        var days = minutes / 1440;
        if (!double.IsInteger(days))
        {
            var at = section.Find("pause")!;
            section.Problems.Error(at.Line, at.Column, $"{section.NameOf("pause")} is not a number of whole days", "write it as 7 d");
        }

        return (int)days;
    }
}
