using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What people found in the ground in the last days, and what stands beside it.</summary>
internal static class FoundInGround
{
    /// <summary>A hot spot of which nobody spoke for longer has been seen to, or has to be probed again.</summary>
    private const int SpotDays = 2;

    public static SheetGround Of(AdviceContext context, IReadOnlyList<ZoneDay> days, GroundKnowledge known, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets, IReadOnlyList<SiteVersion> versions) => new()
    {
        Spots = Spots(context, log),
        Probes = ProbedZones.Of(context, days, log),
        ByHand = [.. context.Zones.Where(z => z.Station.Area.ByHand).Select(z => ByHand(context, z, known))],
        Minutes = LongAside.Of(context, sheets, versions),
    };

    private static IReadOnlyList<DrySpot> Spots(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        var clock = context.Site.Clock;
        var from = clock.DayStart(context.Date.AddDays(-SpotDays));
        var words = log.Where(e => e.Kind is LogKind.Spot or LogKind.Hose or LogKind.Run && e.Time.Instant(clock) >= from).ToLookup(e => e.Kind == LogKind.Spot);
        var spots = new List<DrySpot>();
        foreach (var zone in context.Zones)
        {
            // The newest word on a zone's spot counts; water brought to the spot, or to the whole zone, answers it.
            var newest = words[true].Where(e => e.Value is not null && e.Where.Covers(zone.Station))
                .OrderBy(e => e.Time.Instant(clock)).ThenBy(e => e.Ordinal).LastOrDefault();
            if (newest is null)
            {
                continue;
            }

            var at = newest.Time.Instant(clock);
            var missing = zone.DepletionAt(newest.Value!.Value) is { } mm ? Math.Clamp(mm, 0, zone.TotalAvailableMm) : (double?)null;
            var hosed = words[false].Any(e => e.Where.Covers(zone.Station) && e.Time.Instant(clock) > at);
            if (!hosed && !(missing <= zone.AllowableMm))
            {
                spots.Add(new DrySpot(zone.Station.Key, zone.Station.Label, zone.Station.Area.Name, newest.Time, newest.Value.Value, missing, newest.Note));
            }
        }

        return [.. spots.OrderByDescending(s => s.Time)];
    }

    private static HandWatered ByHand(AdviceContext context, ZonePlan zone, GroundKnowledge known)
    {
        List<DayTraces> mine = [.. known.DaysOf(zone.Station.Key)];
        var full = known.FullOn(zone.Station.Key);
        var since = full ?? (mine.Count > 0 ? mine[0].Date.AddDays(-1) : context.Date.AddDays(-1));
        var eto = mine.Where(d => d.Date > since).Sum(d => d.EtoMm);
        var missing = context.DepletionMm[zone.Station.Key];
        return new HandWatered(zone.Station.Key, zone.Station.Label, zone.Station.Area.Name, since, full is not null, eto, zone.Station.GroundM2 * eto, missing, zone.Station.GroundM2 * missing);
    }
}
