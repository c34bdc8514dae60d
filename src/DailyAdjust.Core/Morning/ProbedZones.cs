using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>Balance and probe side by side, with the moisture meter that was used.</summary>
internal static class ProbedZones
{
    private const int Days = 7;

    /// <summary>Nobody reads a rule closer than that, m.</summary>
    private const double SameM = 0.001;

    /// <summary>Probes of the last week, newest first.</summary>
    public static IReadOnlyList<ProbedZone> Of(AdviceContext context, IReadOnlyList<ZoneDay> days, IReadOnlyList<LogEntry> log)
    {
        var clock = context.Site.Clock;
        var zones = context.Zones.ToDictionary(z => z.Station.Key, z => z.Station);
        List<(DateTimeOffset At, LogEntry Entry)> readings = [.. log
            .Where(e => e is { Kind: LogKind.Probe, Value: not null })
            .Select(e => (e.Time.Instant(clock), e))
            .OrderBy(r => r.Item1).ThenBy(r => r.e.Ordinal)];
        return
        [
            .. days.Where(d => d.Date >= context.Date.AddDays(-Days) && zones.ContainsKey(d.Station))
                .SelectMany(d => d.Probes.Select(p => Of(zones[d.Station], d.Area, p, readings)))
                .OrderByDescending(p => p.At),
        ];
    }

    private static ProbedZone Of(Station station, string area, ProbeFound found, List<(DateTimeOffset At, LogEntry Entry)> readings)
    {
        var mine = readings.Where(r => r.At <= found.At && r.Entry.Where.Covers(station)).Select(r => r.Entry).ToList();
        var (last, before) = (mine[^1], mine.Count > 1 ? mine[^2] : null);
        return new ProbedZone(station.Key, station.Label, area, found.At, found.ReckonedMm, found.ProbedMm)
        {
            CutMm = found.CutMm,
            Instrument = last.Instrument,
            RodM = last.RodM,
            RootM = station.Area.RootDepthM,
            RodsEndAtRoots = last.RodM is { } rod && AreSameDepth(rod, station.Area.RootDepthM),
            IsOtherInstrument = before is not null && (IsOther(last.Instrument, before.Instrument) || (last.RodM is { } now && before.RodM is { } then && !AreSameDepth(now, then))),
        };
    }

    private static bool AreSameDepth(double one, double other) => Math.Abs(one - other) < SameM;

    private static bool IsOther(string now, string before) => now.Length > 0 && before.Length > 0 && !string.Equals(now, before, StringComparison.Ordinal);
}
