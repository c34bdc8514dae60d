using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Water-in and flush: the minutes that bring the depth, less what ran, by hand or by program, what came from the hose and what rained since. Gross minutes = 60 × depth /
/// (rate × efficiency); a flush has to reach the driest quarter too, so it divides by the lower-quarter distribution uniformity where
/// that is known. What the ground cannot take at once comes in runs with a soak between them. Source: common practice.
/// </summary>
internal static class HandRunsPart
{
    /// <summary>Less is done, mm: a rain gauge reads no finer.</summary>
    private const double DoneMm = 0.05;

    /// <summary>How long what was missed is still told.</summary>
    private static readonly TimeSpan ToldLate = TimeSpan.FromHours(24);

    /// <param name="context">The morning as logged.</param>
    /// <param name="ifDone">The same as if unanswered rounds had been done: what did not run in one of the two is not counted; null = everything is answered.</param>
    /// <param name="log">As it is.</param>
    /// <param name="weather">Finished days.</param>
    public static IReadOnlyList<HandRunOrder> Of(AdviceContext context, AdviceContext? ifDone, IReadOnlyList<LogEntry> log, IEnumerable<WeatherDay> weather)
    {
        var clock = context.Site.Clock;
        var falls = weather.SelectMany(d => d.Rain).Concat(context.RainSinceMidnight).SelectMany(g => g.Falls.Select(f => (g.Gauge, Fall: f))).ToLookup(f => f.Gauge, f => f.Fall, StringComparer.Ordinal);
        var orders = new List<HandRunOrder>();
        foreach (var entry in log.Where(e => e is { Kind: LogKind.WaterIn or LogKind.Flush, Value: not null, Until: not null }).OrderBy(e => e.Until!.Value))
        {
            var begin = entry.Time.Begin(clock);
            var due = entry.Until!.Value.Instant(clock);
            if (context.AsOf - due > ToldLate)
            {
                continue;
            }

            var byHand = log.Where(e => e is { Kind: LogKind.Run or LogKind.Hose, Value: not null } && e.Time.Instant(clock) >= begin).ToList();
            List<HandRunStation> stations = [.. context.Zones
                .Where(z => entry.Where.Covers(z.Station))
                .OrderBy(z => context.Site.ControllerOf(z.Station.Key.Controller)!.Route)
                .Select(z => Left(context.Site, z, entry, byHand, Math.Min(RunMinutesSince(context, z, begin), ifDone is null ? double.PositiveInfinity : RunMinutesSince(ifDone, z, begin)), falls[z.Station.Gauge].Where(f => f.At > begin).Sum(f => f.Mm)))
                .OfType<HandRunStation>()];
            if (stations.Count > 0)
            {
                var keys = stations.Select(s => s.Station).ToHashSet();
                var from = begin > context.AsOf ? begin : context.AsOf;
                orders.Add(new HandRunOrder(entry.Kind, entry.Where, entry.Value!.Value, due, due < context.AsOf, entry.By, entry.Note, stations)
                {
                    Begins = begin > context.AsOf ? begin : null,
                    Against = [.. StandingOrdersPart.Off(context, from, o => o.From < due && context.Zones.Any(z => keys.Contains(z.Station.Key) && o.Where.Covers(z.Station)))],
                    Rules = [.. context.Rules.Where(r => IsAgainst(context.Site, r, from, due) && context.Zones.Any(z => keys.Contains(z.Station.Key) && r.Covers(z.Station.Area)))],
                });
            }
        }

        return orders;
    }

    /// <summary>Gross minutes for a depth, not rounded. Source: common practice.</summary>
    /// <param name="depthMm">0 or more.</param>
    /// <param name="rateMmPerHour">Above 0.</param>
    /// <param name="share">Efficiency or distribution uniformity, above 0 to 1.</param>
    public static double GrossMinutes(double depthMm, double rateMmPerHour, double share) => 60 * depthMm / (rateMmPerHour * share);

    /// <summary>Whether a watering rule forbids water at some time of a span.</summary>
    private static bool IsAgainst(Site site, Restriction rule, DateTimeOffset from, DateTimeOffset due)
    {
        // What it forbids can only change at midnight and where its hours begin.
        var instants = new List<DateTimeOffset> { from };
        for (var date = site.Clock.DateOf(from); date <= site.Clock.DateOf(due); date = date.AddDays(1))
        {
            instants.Add(site.Clock.DayStart(date));
            instants.AddRange(rule.HoursNotAllowed is { } hours ? [site.Clock.ToInstant(date, hours.Opens)] : []);
        }

        return instants.Where(at => at >= from && at < due).Select(at => new ProgramStart(site.Clock.DateOf(at), at))
            .Any(at => Prohibitions.ForbidsTime(site, rule, at) || (rule.MostPercent == 0 && rule.HoldsOn(at.Date)));
    }

    /// <summary>Minutes that a station ran in its programs' own starts since an order's begin.</summary>
    private static double RunMinutesSince(AdviceContext context, ZonePlan zone, DateTimeOffset begin)
    {
        var minutes = 0.0;
        for (var date = context.Site.Clock.DateOf(begin); date <= context.Date; date = date.AddDays(1))
        {
            var day = context.Day(date);
            foreach (var start in day.StartsAt(zone.Station.Key.Controller).Where(s => s.Start.At >= begin && s.Start.At <= context.AsOf))
            {
                minutes += zone.Station.BaseMinutes.TryGetValue(start.Program.Key.Program, out var baseMinutes) ? day.MinutesRun(start, zone, baseMinutes) : 0;
            }
        }

        return minutes;
    }

    private static HandRunStation? Left(Site site, ZonePlan zone, LogEntry entry, List<LogEntry> byHand, double programMinutes, double rainMm)
    {
        var station = zone.Station;
        var share = entry.Kind == LogKind.Flush ? station.DistributionUniformity ?? station.Area.DistributionUniformity ?? station.Area.Efficiency : station.Efficiency;
        var minutesRun = programMinutes + byHand.Where(e => e.Kind == LogKind.Run).Sum(e => HandWater.Minutes(e, zone) ?? 0);
        var hoseMm = byHand.Where(e => e.Kind == LogKind.Hose).Sum(e => HandWater.Depth(e, zone) ?? 0);
        var left = entry.Value!.Value - (minutesRun / 60 * station.Rate.MmPerHour * share) - hoseMm - rainMm;
        if (left <= DoneMm)
        {
            return null;
        }

        var controller = site.ControllerOf(station.Key.Controller)!;
        var minutes = RunMinutes.Up(GrossMinutes(left, station.Rate.MmPerHour, share), controller.MinutesStep);
        return CycleAndSoak.Of(station, minutes, controller.MinutesStep) is { } split
            ? new HandRunStation(station.Key, station.Label, left, minutes, split.Cycles, split.MinutesEach, Math.Ceiling(split.SoakMinutes))
            : new HandRunStation(station.Key, station.Label, left, minutes, 1, minutes, 0);
    }
}
