using System.Runtime.InteropServices;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What is asked of the pump from an instant to another, L/min.</summary>
internal readonly record struct FlowStep(DateTimeOffset From, DateTimeOffset To, double LPerMin);

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

    /// <summary>Nothing limits it.</summary>
    public bool IsUnlimited => double.IsPositiveInfinity(_capacity) && _limits.Count == 0;

    /// <summary>Spans in which the flow asked exceeds what the pump gives, in order of time.</summary>
    public IReadOnlyList<PumpExceeded> Exceeded(IReadOnlyList<PlannedRun> runs)
    {
        var found = new List<PumpExceeded>();
        foreach (var step in Flow(runs))
        {
            if (IsTooMuch(step.LPerMin, step.From, out var gives))
            {
                Add(found, new PumpExceeded(step.From, step.To, step.LPerMin, gives));
            }
        }

        return found;
    }

    /// <summary>What runs ask, from one change of it, or of the capacity, to the next, in order of time; empty where nothing limits the pump.</summary>
    public IReadOnlyList<FlowStep> Flow(IReadOnlyList<PlannedRun> runs)
    {
        if (IsUnlimited)
        {
            return [];
        }

        var changes = FlowChanges(runs);
        var instants = changes.Keys.ToArray();
        Array.Sort(instants);
        var steps = new List<FlowStep>(instants.Length);
        long flow = 0;
        for (var i = 0; i + 1 < instants.Length; i++)
        {
            flow += changes[instants[i]];
            steps.Add(new FlowStep(new(instants[i], TimeSpan.Zero), new(instants[i + 1], TimeSpan.Zero), LitresPerMin(flow)));
        }

        return steps;
    }

    /// <summary>Whether the pump gives a run's stations their water beside others.</summary>
    /// <param name="run">What is to run too.</param>
    /// <param name="others">What the others ask.</param>
    public bool HasRoom(PlannedRun run, IReadOnlyList<FlowStep> others) => run.Stations.All(station =>
    {
        var flow = station.Station.FlowLPerMin ?? 0;
        if (flow <= 0)
        {
            return true;
        }

        for (var i = FirstAfter(others, station.Begins); i < others.Count && others[i].From < station.Ends; i++)
        {
            if (others[i].LPerMin + flow > CapacityAt(others[i].From) + Tolerance)
            {
                return false;
            }
        }

        return flow <= LeastIn(station.Begins, station.Ends) + Tolerance;
    });

    /// <summary>Index of the first step that ends after an instant.</summary>
    private static int FirstAfter(IReadOnlyList<FlowStep> steps, DateTimeOffset at)
    {
        int low = 0, high = steps.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = steps[middle].To > at ? (low, middle) : (middle + 1, high);
        }

        return low;
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
                    var units = Units(litres);
                    CollectionsMarshal.GetValueRefOrAddDefault(changes, start + part.Begins.Ticks, out _) += units;
                    CollectionsMarshal.GetValueRefOrAddDefault(changes, start + part.Ends.Ticks, out _) -= units;
                }
            }
        }

        foreach (var instant in Turns)
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

    /// <summary>A flow as so many whole units.</summary>
    public static long Units(double litresPerMin) => (long)Math.Round(litresPerMin * UnitsPerLitre);

    /// <summary>So many units as a flow.</summary>
    public static double LitresPerMin(long units) => units / UnitsPerLitre;

    /// <summary>Whether more is asked than it gives at an instant.</summary>
    /// <param name="asksLPerMin">What is asked.</param>
    /// <param name="at">UTC.</param>
    /// <param name="givesLPerMin">What it gives then.</param>
    public bool IsTooMuch(double asksLPerMin, DateTimeOffset at, out double givesLPerMin)
    {
        givesLPerMin = CapacityAt(at);
        return asksLPerMin > givesLPerMin + Tolerance;
    }

    /// <summary>When it begins to give otherwise, UTC, in no order.</summary>
    public IEnumerable<DateTimeOffset> Turns => _limits.SelectMany(l => l.Until is { } until ? new[] { l.From, until } : [l.From]);

    /// <summary>When it gives more again, UTC.</summary>
    public IEnumerable<DateTimeOffset> GivesMore => _limits.Select(l => l.Until).OfType<DateTimeOffset>();

    /// <summary>The least that the pump gives in a span, L/min; infinite where nothing limits it.</summary>
    public double LeastIn(DateTimeOffset from, DateTimeOffset to) =>
        _limits.Where(l => l.From > from && l.From < to).Select(l => l.Capacity).Append(CapacityAt(from)).Min();

    /// <summary>Whether a flow is more than the pump ever gives in a span.</summary>
    /// <param name="flowLPerMin">Of one station.</param>
    /// <param name="from">UTC.</param>
    /// <param name="to">UTC, excluded.</param>
    /// <param name="mostLPerMin">The most that it gives in that span.</param>
    public bool IsBeyond(double flowLPerMin, DateTimeOffset from, DateTimeOffset to, out double mostLPerMin)
    {
        mostLPerMin = _limits.SelectMany(l => new[] { l.From, l.Until ?? to }).Where(at => at > from && at < to).Select(CapacityAt).Append(CapacityAt(from)).Max();
        return flowLPerMin > mostLPerMin + Tolerance;
    }

    /// <summary>What it gives at an instant, L/min; infinite where nothing limits it.</summary>
    public double CapacityAt(DateTimeOffset at)
    {
        var capacity = _capacity;
        foreach (var (from, until, limit) in _limits)
        {
            capacity = from <= at && (until is null || at < until) ? Math.Min(capacity, limit) : capacity;
        }

        return capacity;
    }
}
