using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>stages: the steps of the drought plan, put in force by the logbook.</summary>
internal static class StageSection
{
    public static IReadOnlyList<DroughtStage> ReadAll(Section root, IReadOnlyList<string> areas)
    {
        var sections = root.Maps("stages");
        DroughtStage[] stages = [.. sections.Select(s => Read(s, areas))];
        Names.CheckUnique(stages.Zip(sections, (stage, s) => (stage.Name, s.KeyOf("name"))), "stage", root.Problems);
        return stages;
    }

    private static DroughtStage Read(Section section, IReadOnlyList<string> areas)
    {
        var stage = new DroughtStage
        {
            Name = section.NeedText("name", "stage 2"),
            DaysNotAllowed = section.Find("days") is { } days ? DayPatterns.WaterDays(days, section.NameOf("days"), section) : null,
            HoursNotAllowed = WindowSection.Read(section.Map("hours"), "from", "until"),
            MostPercent = section.Quantity("percent", UnitKind.Percent, new(0, 100)),
            CutOrder = section.Find("cut_order") is { } order ? AreaNames.Read(order, section.NameOf("cut_order"), section.Problems, areas) : [],
        };
        section.Done();
        if (string.Equals(stage.Name, StageHistory.None, StringComparison.OrdinalIgnoreCase))
        {
            Wrong(section, "name", $"a stage cannot be called {StageHistory.None}", "the logbook's `stage none` ends one");
        }

        if (!section.Has("days") && !section.Has("hours") && !section.Has("percent"))
        {
            section.Problems.Error(section.At.Line, section.At.Column, $"{section.Name} restricts nothing", "give it days or hours that are not allowed, or the percent of the base minutes' water that is left");
        }

        if (section.Has("cut_order") && !section.Has("percent"))
        {
            Wrong(section, "cut_order", $"{section.Name} has a cut_order and no percent", "say what the cut has to reach: percent: 60 %");
        }

        foreach (var twice in stage.CutOrder.GroupBy(a => a, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            Wrong(section, "cut_order", $"{section.NameOf("cut_order")}: {Wording.Quote(twice.Key)} stands there twice", "keep one of them");
        }

        return stage;
    }

    private static void Wrong(Section section, string key, string what, string hint)
    {
        var at = section.KeyOf(key);
        section.Problems.Error(at.Line, at.Column, what, hint);
    }
}
