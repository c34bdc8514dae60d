using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Rain gauges judged by one another, in plain sentences: sprinklers in reach, a funnel that is blocked. Their rain counts all the same.
/// The limits are common practice.
/// </summary>
internal static class GaugeDoubts
{
    private const int SprinklerDays = 14;
    private const int BlockedDays = 30;
    private const int Fewest = 3;

    /// <summary>Rain of an interval that ends up to an hour after a run may have come from the run.</summary>
    private static readonly TimeSpan Interval = TimeSpan.FromHours(1);

    /// <summary>A day's rain at the other gauges from which on it fell here too.</summary>
    private const double RainEverywhereMm = 5;

    private const double FarLess = 0.25;

    /// <summary>Over weeks the rain on one course evens out: a gauge that has less than this share of it, and on most of the days less, loses some.</summary>
    private const double Less = 0.6;
    private const int FewestForLess = 5;
    private const double MostDays = 0.8;

    private static readonly TimeSpan TricklesFor = TimeSpan.FromHours(4);

    /// <param name="context">The morning.</param>
    /// <param name="weather">Days before the sheet's date, ascending.</param>
    public static IReadOnlyList<Phrase> Of(AdviceContext context, IReadOnlyList<WeatherDay> weather) =>
    [
        .. context.Site.Weather.Gauges.SelectMany(gauge => new[] { Sprinklers(context, weather, gauge.Id), Blocked(context, weather, gauge.Id) }).OfType<Phrase>(),
    ];

    private static Phrase? Sprinklers(AdviceContext context, IReadOnlyList<WeatherDay> weather, string gauge)
    {
        var near = context.Programs.Where(p => context.ZonesOf(p).Any(z => string.Equals(z.Station.Gauge, gauge, StringComparison.Ordinal))).ToList();
        var found = weather.Where(d => d.Date >= context.Date.AddDays(-SprinklerDays))
            .Select(d => (d.Date, Of: Measured(d, gauge), Others: Others(d, gauge)))
            .Where(d => d.Of is { RainMm: > 0 } && d.Others.Count > 0 && d.Others.All(o => o.RainMm == 0))
            .ToList();
        var during = found.Where(d =>
        {
            var runs = near.SelectMany(p => Runs(context, p, d.Date.AddDays(-1)).Concat(Runs(context, p, d.Date))).ToList();
            return d.Of!.Falls.All(f => runs.Exists(r => f.At > r.Begins && f.At <= r.Ends + Interval));
        }).ToList();
        return during.Count >= Fewest
            ? Phrase.Of($"Gauge {gauge}: on {during.Count} of the last {SprinklerDays} days it shows rain only while a program near it ran ({Words.Depth(context.Site.Units, during.Sum(d => d.Of!.RainMm!.Value))} in all) and the other gauges stayed dry: sprinklers may reach it. Look, and enter the true rain of those dates.")
            : null;
    }

    private static Phrase? Blocked(AdviceContext context, IReadOnlyList<WeatherDay> weather, string gauge)
    {
        var days = weather.Where(d => d.Date >= context.Date.AddDays(-BlockedDays)).Select(d => (Of: Measured(d, gauge), Others: Others(d, gauge)))
            .Where(d => d.Of is not null && d.Others.Count > 0 && d.Others.Average(o => o.RainMm!.Value) >= RainEverywhereMm)
            .ToList();
        double here = days.Sum(d => d.Of!.RainMm!.Value), there = days.Sum(d => d.Others.Average(o => o.RainMm!.Value));
        if (days.Count >= Fewest && here < FarLess * there)
        {
            return Phrase.Of($"Gauge {gauge}: {Words.Depth(context.Site.Units, here)} on {days.Count} days of rain of the last {BlockedDays}, the other gauges {Words.Depth(context.Site.Units, there)}: its funnel may be blocked. Clean it, and enter the rain by hand meanwhile.");
        }

        if (days.Count >= FewestForLess && here < Less * there && days.Count(d => d.Of!.RainMm < d.Others.Average(o => o.RainMm!.Value)) >= MostDays * days.Count)
        {
            return Phrase.Of($"Gauge {gauge}: {Words.Depth(context.Site.Units, here)} on {days.Count} days of rain of the last {BlockedDays}, the other gauges {Words.Depth(context.Site.Units, there)}: its funnel may be half blocked. Clean it, see that it stands level and in the open, and enter the rain by hand meanwhile.");
        }

        var trickled = days.Count(d => d.Of!.Falls.Count > 1 && d.Others.All(o => o.Falls.Count > 1) && d.Of.Falls[^1].At - d.Others.Max(o => o.Falls[^1].At) >= TricklesFor);
        return trickled >= Fewest
            ? Phrase.Of($"Gauge {gauge}: on {trickled} of the last {BlockedDays} days it still trickled {TricklesFor.TotalHours} h and more after the other gauges' rain was over: its funnel may be half blocked. Clean it.")
            : null;
    }

    /// <summary>As the instrument knows it; what a person read off it is not doubted.</summary>
    private static GaugeDay? Measured(WeatherDay day, string gauge) =>
        day.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal)) is { Basis: RainBasis.Measured, RainMm: not null } known ? known : null;

    private static List<GaugeDay> Others(WeatherDay day, string gauge) =>
        [.. day.Rain.Where(r => !string.Equals(r.Gauge, gauge, StringComparison.Ordinal) && r is { RainMm: not null, Basis: RainBasis.Measured or RainBasis.Logbook })];

    private static IEnumerable<(DateTimeOffset Begins, DateTimeOffset Ends)> Runs(AdviceContext context, PlannedProgram program, DateOnly date)
    {
        foreach (var inForce in context.GrowIns.InDay(program, date))
        {
            var start = inForce.Start;
            var setting = context.SettingAt(program.Key, start.At);
            if (!setting.IsOff)
            {
                yield return (start.At, start.At + context.Laying.LengthOf(inForce.Due(program, setting.Percent)));
            }
        }
    }
}
