using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What all controllers together ask of the pump. Stations without a known flow count 0.</summary>
internal sealed class PumpLoad
{
    private const double Tolerance = 1e-9;
    private readonly double _capacity;
    private readonly List<(DateTimeOffset From, DateTimeOffset? Until, double Capacity)> _limits;

    /// <param name="site">Its pump.</param>
    /// <param name="log">Its `pump` entries.</param>
    public PumpLoad(Site site, IReadOnlyList<LogEntry> log)
    {
        _capacity = site.PumpCapacityLPerMin ?? double.PositiveInfinity;
        _limits = [.. log
            .Where(e => e.Kind == LogKind.Pump && e.Value is not null)
            .Select(e => (e.Time.Begin(site.Clock), e.Until?.Instant(site.Clock), e.Value!.Value))];
    }

    /// <summary>Spans in which the flow asked exceeds what the pump gives, in order of time.</summary>
    public IReadOnlyList<PumpExceeded> Exceeded(IReadOnlyList<PlannedRun> runs)
    {
        var found = new List<PumpExceeded>();
        if (double.IsPositiveInfinity(_capacity) && _limits.Count == 0)
        {
            return found;
        }

        var stations = runs.SelectMany(r => r.Stations).Where(s => s.Station.FlowLPerMin is > 0).OrderBy(s => s.Begins).ToList();
        var instants = stations.SelectMany(s => new[] { s.Begins, s.Ends })
            .Concat(_limits.SelectMany(l => l.Until is { } until ? new[] { l.From, until } : [l.From]))
            .Distinct().Order().ToList();
        var running = new List<StationRun>();
        var next = 0;
        for (var i = 0; i + 1 < instants.Count; i++)
        {
            DateTimeOffset from = instants[i], to = instants[i + 1];
            running.RemoveAll(s => s.Ends <= from);
            while (next < stations.Count && stations[next].Begins <= from)
            {
                running.Add(stations[next++]);
            }

            // Added up anew each time: a running sum would keep the last bits of what has ended.
            var flow = running.Sum(s => s.Station.FlowLPerMin!.Value);
            var capacity = CapacityAt(from);
            if (flow > capacity + Tolerance)
            {
                Add(found, new PumpExceeded(from, to, flow, capacity));
            }
        }

        return found;
    }

    /// <summary>Neighbouring spans are one, with the largest flow asked in it.</summary>
    private static void Add(List<PumpExceeded> found, PumpExceeded span)
    {
        if (found.Count > 0 && found[^1] is var last && last.To == span.From && last.CapacityLPerMin == span.CapacityLPerMin)
        {
            found[^1] = last with { To = span.To, FlowLPerMin = Math.Max(last.FlowLPerMin, span.FlowLPerMin) };
            return;
        }

        found.Add(span);
    }

    /// <summary>When it gives more again, UTC.</summary>
    public IEnumerable<DateTimeOffset> Changes => _limits.Select(l => l.Until).OfType<DateTimeOffset>();

    /// <summary>The least that the pump gives in a span, L/min; infinite where nothing limits it.</summary>
    public double LeastIn(DateTimeOffset from, DateTimeOffset to) =>
        _limits.Where(l => l.From > from && l.From < to).Select(l => l.Capacity).Append(CapacityAt(from)).Min();

    private double CapacityAt(DateTimeOffset at)
    {
        var capacity = _capacity;
        foreach (var limit in _limits.Where(l => l.From <= at && (l.Until is null || at < l.Until)))
        {
            capacity = Math.Min(capacity, limit.Capacity);
        }

        return capacity;
    }
}
