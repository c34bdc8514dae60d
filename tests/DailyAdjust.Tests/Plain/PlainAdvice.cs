using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>What the sheet says to do with one program.</summary>
internal sealed record PlainProgramAdvice(
    ProgramKey Key,
    Setting Present,
    AdviceKind Advice,
    double? Percent,
    double? ExactPercent,
    IReadOnlyList<PlainZoneNeed> Zones,
    IReadOnlyList<PlainZoneNeed> SetAside);

/// <summary>The advice of one morning, in walking order.</summary>
internal static class PlainAdvice
{
    public static IReadOnlyList<PlainProgramAdvice> Run(MorningInputs inputs)
    {
        var morning = new PlainMorning(inputs);
        var advice = new List<PlainProgramAdvice>();
        foreach (var controller in morning.Site.Controllers.OrderBy(c => c.Route))
        {
            if (controller.Applies == PercentApplies.Controller)
            {
                var programs = controller.Programs.Select(p => Program(inputs, morning, controller, p)).ToList();
                advice.AddRange(programs.Select(p => Decide(inputs, morning, controller, p, programs)));
                continue;
            }

            // In the order of starts, each with what was decided for those before it.
            var decided = new List<PlainProgramAdvice>();
            foreach (var program in controller.Programs.OrderBy(p => morning.FirstStart(controller, p)))
            {
                var need = Program(inputs, morning, controller, program);
                var said = Decide(inputs, morning, controller, need, [need]);
                decided.Add(said);
                if (new PlainVisits(morning.Site, said.Key, program.Visit, inputs.Log).Includes(inputs.Date))
                {
                    morning.NewSettings[said.Key] = said.Advice switch
                    {
                        AdviceKind.Set or AdviceKind.Resume => new Setting(said.Percent!.Value),
                        AdviceKind.Leave or AdviceKind.AsSet => said.Present,
                        _ => Setting.Off,
                    };
                }
            }

            advice.AddRange(controller.Programs.Select(p => decided.Single(d => d.Key.Program.Is(p.Id))));
        }

        return advice;
    }

    /// <summary>What one program needs by itself; no areas where it has no start in the horizon or nobody comes.</summary>
    private sealed record ProgramNeed(WateringProgram Program, ProgramKey Key, PlainHorizon Horizon, IReadOnlyList<PlainZoneNeed> Zones, IReadOnlyList<PlainArea> Areas)
    {
        public double Exact => Areas.Max(a => a.Percent);

        public bool CanWait => Areas.All(a => a.CanWait);

        public bool Due => Areas.Any(a => a.Due);

        public IEnumerable<PlainZoneNeed> SetAside => Areas.SelectMany(a => a.SetAside);
    }

    private static ProgramNeed Program(MorningInputs inputs, PlainMorning morning, Controller controller, WateringProgram program)
    {
        var key = new ProgramKey(controller.Id, program.Id);
        var visits = new PlainVisits(morning.Site, key, program.Visit, inputs.Log);
        var horizon = PlainHorizon.Of(morning.Site, controller, program, visits, inputs.Date);
        if (horizon.Starts.Count == 0 || !visits.Includes(inputs.Date) || NoSoundAdvice(inputs, morning))
        {
            return new(program, key, horizon, [], []);
        }

        var stations = morning.Site.Stations.Where(s => s.Key.Controller.Is(controller.Id) && s.BaseMinutes.ContainsKey(program.Id)).ToList();
        var zones = stations.Select(s => PlainZoneNeed.Of(morning, controller, program, horizon, s)).ToList();
        var byStation = stations.Any(s => s.GroundM2 is null);
        double Ground(PlainZoneNeed zone) => byStation ? 1 : zone.Station.GroundM2!.Value;
        var areas = zones
            .GroupBy(z => z.Station.Area.Name, StringComparer.Ordinal)
            .Select(g => PlainArea.Of([.. g], Ground, morning.Site.Report.Satisfy))
            .ToList();
        return new(program, key, horizon, zones, areas);
    }

    private static bool NoSoundAdvice(MorningInputs inputs, PlainMorning morning) =>
        morning.WeatherTooOld || morning.HasOpenDay || morning.ExpectedEto(inputs.Date) is null;

    /// <summary>The first that applies.</summary>
    /// <param name="together">All programs that share the percentage.</param>
    private static PlainProgramAdvice Decide(MorningInputs inputs, PlainMorning morning, Controller controller, ProgramNeed program, IReadOnlyList<ProgramNeed> together)
    {
        var present = morning.Present(program.Key);
        var needs = together.Where(p => p.Areas.Count > 0).ToList();
        double? exact = needs.Count == 0 ? null : needs.Max(p => p.Exact);
        PlainProgramAdvice Say(AdviceKind kind, double? percent) =>
            new(program.Key, present, kind, percent, exact, program.Zones, [.. program.SetAside]);

        if (SeasonClosed(inputs, morning.Site, program.Key) || OnHold(inputs, morning.Site, program.Key))
        {
            return Say(AdviceKind.Off, null);
        }

        if (NoSoundAdvice(inputs, morning))
        {
            return Say(AdviceKind.AsSet, null);
        }

        if (exact is not { } need)
        {
            return present.IsOff ? Say(AdviceKind.KeepOff, 0) : Say(AdviceKind.Leave, present.Percent);
        }

        if (needs.All(p => p.CanWait) && (need <= morning.Site.Report.SkipBelowPercent || !needs.Any(p => p.Due)))
        {
            return present.IsOff ? Say(AdviceKind.KeepOff, 0) : Say(AdviceKind.Skip, null);
        }

        // Runs shorter than the least one on most of the ground: not worth it where it can wait, else longer ones.
        bool TooShort(double percent)
        {
            double whole = 0, shorter = 0;
            foreach (var p in needs)
            {
                var byStation = p.Zones.Any(z => z.Station.GroundM2 is null);
                foreach (var station in p.Zones.Select(z => z.Station))
                {
                    var ground = byStation ? 1 : station.GroundM2!.Value;
                    whole += ground;
                    shorter += PlainWater.Minutes(controller, station.BaseMinutes[p.Program.Id], percent) < controller.LeastRunMinutes ? ground : 0;
                }
            }

            return shorter > whole / 2;
        }

        var number = Dial(controller, need);
        if (needs.All(p => p.CanWait) && TooShort(number))
        {
            return present.IsOff ? Say(AdviceKind.KeepOff, 0) : Say(AdviceKind.Skip, null);
        }

        var longer = number;
        while (TooShort(longer) && longer < controller.PercentMax)
        {
            longer = Math.Min(longer + controller.PercentStep, controller.PercentMax);
        }

        number = TooShort(longer) ? number : longer;
        if (present.IsOff)
        {
            return Say(AdviceKind.Resume, number);
        }

        var running = needs.Where(p => !morning.Present(p.Key).IsOff).ToList();
        var goodEnough = running.All(p => GoodEnough(morning, controller, p, number));
        var noMinutes = running.All(p => p.Zones.All(z => SameMinutes(morning, controller, p, z.Station, number)));
        return goodEnough || noMinutes ? Say(AdviceKind.Leave, present.Percent) : Say(AdviceKind.Set, number);
    }

    /// <summary>To the controller's step, halves up, in its range, never 0.</summary>
    private static double Dial(Controller controller, double exact)
    {
        var rounded = Math.Floor((exact / controller.PercentStep) + 0.5 + 1e-9) * controller.PercentStep;
        var kept = Math.Clamp(rounded, controller.PercentMin, controller.PercentMax);
        return kept > 0 ? kept : Math.Min(controller.PercentStep, controller.PercentMax);
    }

    private static bool SameMinutes(PlainMorning morning, Controller controller, ProgramNeed program, Station station, double number)
    {
        var minutes = station.BaseMinutes[program.Program.Id];
        return PlainWater.Minutes(controller, minutes, morning.Present(program.Key).Percent) == PlainWater.Minutes(controller, minutes, number);
    }

    private static bool GoodEnough(PlainMorning morning, Controller controller, ProgramNeed program, double number) =>
        program.Zones.Except(program.SetAside).All(zone =>
        {
            var station = zone.Station;
            var raw = station.Area.AllowableDepletionMm;
            var worth = morning.Site.Report.Worth * raw;
            var horizon = program.Horizon;
            IReadOnlyList<PlainStep> At(double percent) => morning.Simulate(
                station,
                program.Program,
                _ => PlainWater.Minutes(controller, station.BaseMinutes[program.Program.Id], percent),
                horizon.FirstAfter ?? horizon.Starts[^1]);

            var now = At(morning.Present(program.Key).Percent);
            var then = At(number);
            var drains = horizon.Starts.Sum(s => PlainZoneNeed.Step(now, s).Drained);
            return drains <= worth + PlainSoil.Same && horizon.Later.All(s =>
            {
                var before = PlainZoneNeed.Step(now, s).Before;
                return before <= raw + PlainSoil.Same || before <= PlainZoneNeed.Step(then, s).Before + worth + PlainSoil.Same;
            });
        });

    private static bool SeasonClosed(MorningInputs inputs, Site site, ProgramKey key) => inputs.Log
        .Where(e => e.Kind == LogKind.Season && PlainLog.Covers(e.Where, key))
        .OrderBy(e => e.Time.Instant(site.Clock))
        .LastOrDefault() is { } season && !season.Text.Is("open");

    private static bool OnHold(MorningInputs inputs, Site site, ProgramKey key) => inputs.Log.Any(e =>
        e.Kind == LogKind.Hold && PlainLog.Covers(e.Where, key) && (e.Until is not { } until || until.Instant(site.Clock) > inputs.AsOf));
}
