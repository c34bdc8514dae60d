using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Morning;

/// <summary>Parts 3 and 4 of the sheet: what happened overnight, and what was due to run.</summary>
internal static class OvernightPart
{
    /// <summary>An earlier start for which a later one waits lies no further back.</summary>
    private static readonly TimeSpan WaitsAtMost = TimeSpan.FromHours(24);

    public static Overnight Of(MorningInputs inputs, Site site)
    {
        var yesterday = inputs.Weather.Count > 0 && inputs.Weather[^1].Date == inputs.Date.AddDays(-1) ? inputs.Weather[^1] : null;
        var coldest = Coldest(inputs, site);
        return new Overnight(
            [.. site.Weather.Gauges.Select(g => Rain(inputs, yesterday, g.Id))],
            yesterday?.EtoMm,
            coldest?.AirTemperatureC,
            coldest?.End);
    }

    private static OvernightRain Rain(MorningInputs inputs, WeatherDay? yesterday, string gauge)
    {
        var today = inputs.RainSinceMidnight.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal));
        return new OvernightRain(gauge, yesterday?.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal))?.RainMm, today?.RainMm)
        {
            ByHand = [.. inputs.RainByHand.Where(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal))],
            IsPartAside = today?.IsPartAside ?? false,
        };
    }

    /// <summary>Null = no temperature of the night is known.</summary>
    public static Reading? Coldest(MorningInputs inputs, Site site) => Measured(inputs, site).Where(r => !double.IsNaN(r.AirTemperatureC)).MinBy(r => r.AirTemperatureC);

    /// <summary>The night's readings, without values that no sensor can have measured.</summary>
    public static IEnumerable<Reading> Measured(MorningInputs inputs, Site site)
    {
        var source = site.Weather.StationOf(inputs.NewestReadingStation);
        if (source is null)
        {
            return [];
        }

        var notes = new CheckNotes(site, source, DaySpan.Of(site.Clock, inputs.Date));
        return inputs.NightReadings.Select(r => ValueChecks.Keep(r, notes));
    }

    /// <summary>Starts of the last 24 hours whose program was not off and whose pipes were not empty, in order; each ends when its box, which may let it wait for an earlier one, is done with it.</summary>
    public static IReadOnlyList<DueRun> DueRuns(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        var ran = new RanHistory(context.Site.Clock, log);
        var due =
            from run in RunsSince(context, context.AsOf - DueRun.LookedBack)
            let start = run.Start
            orderby run.Program.Controller.Route, start.At
            select new DueRun(
                run.Program.Key, run.Program.Program.Name, start.Date, start.At, run.Finishes, context.SettingAt(run.Program.Key, start.At), ran.IsToldOf(run.Program.Key, start.Date, start.At, run.Finishes))
            {
                IsOneOfSeveral = IsOneOfSeveral(context, run),
            };
        return [.. due];
    }

    /// <summary>Whether the program has other starts on the run's date, before or after it: a word about that date would speak of them too.</summary>
    public static bool IsOneOfSeveral(AdviceContext context, PlannedRun run) =>
        context.StartsOf(run.Program, context.Site.Clock.DayStart(run.Start.Date).AddDays(-1)).Select(s => s.Start.Date).TakeWhile(d => d <= run.Start.Date).Count(d => d == run.Start.Date) > 1;

    /// <summary>The runs of starts after an instant and up to now, by controller, then by start; of one whose program was off or whose pipes were empty there is none.</summary>
    public static IReadOnlyList<PlannedRun> RunsSince(AdviceContext context, DateTimeOffset since) =>
    [
        .. context.Laying.Between(context.GrowIns, context.Programs, since - WaitsAtMost, context.AsOf.AddTicks(1), (key, start) =>
            context.Season.IsDrained(key.Controller, start.Start.At) ? 0 : context.SettingAt(key, start.Start.At).Percent).Where(r => r.Start.At > since),
    ];
}
