using System.Runtime.InteropServices;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What all controllers together ask of the pump. Stations without a known flow count 0.</summary>
internal sealed class PumpLoad
{
    private const double Tolerance = 1e-9;

    /// <summary>Flows are added and taken off as whole units: what has ended leaves no last bits behind.</summary>
    private const double UnitsPerLitre = 1e9;

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

        var changes = FlowChanges(runs);
        var instants = changes.Keys.ToArray();
        Array.Sort(instants);
        long flow = 0;
        for (var i = 0; i + 1 < instants.Length; i++)
        {
            flow += changes[instants[i]];
            DateTimeOffset from = new(instants[i], TimeSpan.Zero), to = new(instants[i + 1], TimeSpan.Zero);
            var capacity = CapacityAt(from);
            if (flow / UnitsPerLitre > capacity + Tolerance)
            {
                Add(found, new PumpExceeded(from, to, flow / UnitsPerLitre, capacity));
            }
        }

        return found;
    }

    /// <summary>By instant (UTC ticks): by how much the flow asked changes, in units of it; and the instants at which the capacity does.</summary>
    private Dictionary<long, long> FlowChanges(IReadOnlyList<PlannedRun> runs)
    {
        var changes = new Dictionary<long, long>();
        foreach (var run in runs)
        {
            var start = run.Begins.UtcTicks;
            foreach (var part in run.Sequence.Parts)
            {
                if (part.Station.FlowLPerMin is { } litres and > 0)
                {
                    var units = (long)Math.Round(litres * UnitsPerLitre);
                    CollectionsMarshal.GetValueRefOrAddDefault(changes, start + part.Begins.Ticks, out _) += units;
                    CollectionsMarshal.GetValueRefOrAddDefault(changes, start + part.Ends.Ticks, out _) -= units;
                }
            }
        }

        foreach (var instant in _limits.SelectMany(l => l.Until is { } until ? new[] { l.From, until } : [l.From]))
        {
            changes.TryAdd(instant.UtcTicks, 0);
        }

        return changes;
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
    public IEnumerable<DateTimeOffset> GivesMore => _limits.Select(l => l.Until).OfType<DateTimeOffset>();

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
