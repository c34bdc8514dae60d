using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>Balance and probe side by side, with the moisture meter that was used.</summary>
internal static class ProbedZones
{
    private const int Days = 7;

    /// <summary>Probes of the last week, newest first.</summary>
    public static IReadOnlyList<ProbedZone> Of(AdviceContext context, IReadOnlyList<ZoneDay> days, IReadOnlyList<LogEntry> log)
    {
        var clock = context.Site.Clock;
        var zones = context.Zones.ToDictionary(z => z.Station.Key, z => z.Station);
        List<(DateTimeOffset At, LogEntry Entry)> readings = [.. log
            .Where(e => e is { Kind: LogKind.Probe, Value: not null })
            .Select(e => (e.Time.Instant(clock), e))
            .OrderBy(r => r.Item1).ThenBy(r => r.e.Ordinal)];
        var earlier = days.Where(d => d.LastProbe is not null && d.Date >= context.Date.AddDays(-Days) && zones.ContainsKey(d.Station))
            .SelectMany(d => d.Probes.Select(p => Of(zones[d.Station], d.Area, p, readings)));
        var midnight = clock.DayStart(context.Date);
        var probed = readings.Where(r => r.At >= midnight).Select(r => r.Entry.Where).ToList();
        var today = context.Zones.Where(z => probed.Exists(where => where.Covers(z.Station))).SelectMany(z => Today(context, z).Select(p => Of(z.Station, z.Station.Area.Name, p, readings)));
        return [.. earlier.Concat(today).OrderByDescending(p => p.At)];
    }

    /// <summary>Since midnight, by the morning's instant.</summary>
    private static IReadOnlyList<ProbeFound> Today(AdviceContext context, ZonePlan zone)
    {
        var events = WaterSinceMidnight.Of(context, zone);
        if (!events.Exists(e => e.Kind == WaterKind.Probe))
        {
            return [];
        }

        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, context.DepletionMm[zone.Station.Key]);
        return ZoneDaySums.Run(ref soil, events, context.DemandMm(zone, context.Date), events[^1].DrawnBy).LastProbe?.WithEarlier() ?? [];
    }

    private static ProbedZone Of(Station station, string area, ProbeFound found, List<(DateTimeOffset At, LogEntry Entry)> readings)
    {
        var mine = readings.Where(r => r.At <= found.At && r.Entry.Where.Covers(station)).Select(r => r.Entry).ToList();
        var (last, before) = (mine[^1], mine.Count > 1 ? mine[^2] : null);
        return new ProbedZone(station.Key, station.Label, area, found.At, found.ReckonedMm, found.ProbedMm)
        {
            CutMm = found.CutMm,
            Instrument = last.Instrument,
            RodLengthM = last.RodLengthM,
            RootDepthM = station.Area.RootDepthM,
            IsOtherInstrument = before is not null && (IsOther(last.Instrument, before.Instrument) || (last.RodLengthM is { } now && before.RodLengthM is { } then && !ProbedZone.AreSameDepth(now, then))),
        };
    }

    private static bool IsOther(string now, string before) => now.Length > 0 && before.Length > 0 && !string.Equals(now, before, StringComparison.Ordinal);
}
