using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What all controllers together ask of the pump.</summary>
internal static class PumpLoad
{
    private const double Tolerance = 1e-9;

    /// <summary>Spans in which the flow asked exceeds what the pump gives, in order of time. Stations without a known flow count 0.</summary>
    public static IEnumerable<PumpExceeded> Exceeded(Site site, IReadOnlyList<PlannedRun> runs, IReadOnlyList<LogEntry> log)
    {
        var limits = log
            .Where(e => e.Kind == LogKind.Pump && e.Value is not null)
            .Select(e => (From: e.Time.Clock is null ? site.Clock.DayStart(e.Time.Date) : e.Time.Instant(site.Clock), Until: e.Until?.Instant(site.Clock), Capacity: e.Value!.Value))
            .ToList();
        if (site.PumpCapacityLPerMin is null && limits.Count == 0)
        {
            yield break;
        }

        var stations = runs.SelectMany(r => r.Stations).Where(s => s.Station.FlowLPerMin is > 0).ToList();
        var instants = stations.SelectMany(s => new[] { s.Begins, s.Ends })
            .Concat(limits.SelectMany(l => l.Until is { } until ? new[] { l.From, until } : [l.From]))
            .Distinct().Order().ToList();
        PumpExceeded? open = null;
        for (var i = 0; i + 1 < instants.Count; i++)
        {
            DateTimeOffset from = instants[i], to = instants[i + 1];
            var flow = stations.Where(s => s.Begins <= from && s.Ends >= to).Sum(s => s.Station.FlowLPerMin!.Value);
            var capacity = CapacityAt(site, limits, from);
            if (flow <= capacity + Tolerance)
            {
                if (open is not null)
                {
                    yield return open;
                    open = null;
                }

                continue;
            }

            // Neighbouring spans are one, with the largest flow asked in it.
            open = open is { } o && o.To == from && o.CapacityLPerMin == capacity
                ? o with { To = to, FlowLPerMin = Math.Max(o.FlowLPerMin, flow) }
                : open is null ? new PumpExceeded(from, to, flow, capacity) : open;
            if (open.To != to)
            {
                yield return open;
                open = new PumpExceeded(from, to, flow, capacity);
            }
        }

        if (open is not null)
        {
            yield return open;
        }
    }

    private static double CapacityAt(Site site, List<(DateTimeOffset From, DateTimeOffset? Until, double Capacity)> limits, DateTimeOffset at)
    {
        var capacity = site.PumpCapacityLPerMin ?? double.PositiveInfinity;
        foreach (var limit in limits.Where(l => l.From <= at && (l.Until is null || at < l.Until)))
        {
            capacity = Math.Min(capacity, limit.Capacity);
        }

        return capacity;
    }
}
