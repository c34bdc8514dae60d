using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What is started together on one box.</summary>
/// <param name="Rank">Priority of its ground, 0 the most important.</param>
/// <param name="Controller">The box.</param>
/// <param name="Box">What runs.</param>
internal sealed record HandBlock(int Rank, Controller Controller, HandBox Box)
{
    public TimeSpan Length => TimeSpan.FromMinutes(Box.Stations.Sum(s => s.Minutes)) + (Controller.StationGap * (Box.Stations.Count - 1));

    /// <summary>L/min; what is not known counts 0.</summary>
    public double PeakLPerMin => Box.Stations.Max(s => s.FlowLPerMin ?? 0);

    public bool FlowIsKnown => Box.Stations.All(s => s.FlowLPerMin is not null);

    /// <summary>What of it is done within a time while each station may run, and the rest; null = nothing of it.</summary>
    /// <param name="begins">When its first station would begin, UTC.</param>
    /// <param name="within">The longest that it may take.</param>
    /// <param name="may">Whether a station may run through a span.</param>
    public (HandBlock? Done, HandBlock? Later) Split(DateTimeOffset begins, TimeSpan within, Func<StationKey, DateTimeOffset, DateTimeOffset, bool> may)
    {
        List<MissedStation> done = [], later = [];
        foreach (var station in Box.Stations)
        {
            var ends = With([.. done, station]).Length;
            var fits = ends <= within && may(station.Station, begins + ends - TimeSpan.FromMinutes(station.Minutes), begins + ends);
            (fits ? done : later).Add(station);
            within = fits || ends <= within ? within : TimeSpan.MinValue;
        }

        return later.Count == 0 ? (this, null) : (done.Count == 0 ? null : With(done), done.Count == 0 ? this : With(later));
    }

    private HandBlock With(IEnumerable<MissedStation> stations) => this with { Box = new HandBox(Box.Controller, null, null, [.. stations]) };
}

/// <summary>
/// Puts what is to be run by hand into groups of boxes that run at the same time. The most important ground comes first; other boxes join
/// while the pump, with what runs by itself, keeps up whichever stations meet, and ground of less importance only as far as it keeps
/// nobody waiting. One group ends before the next begins.
/// </summary>
/// <param name="pump">What it gives.</param>
/// <param name="runs">What runs by itself meanwhile.</param>
/// <param name="permits">When a station may run.</param>
internal sealed class HandGroups(PumpLoad pump, IReadOnlyList<PlannedRun> runs, HandPermits permits)
{
    private const double Tolerance = 1e-9;

    /// <param name="blocks">The most important first.</param>
    /// <param name="now">When the first group begins.</param>
    /// <param name="firstPlay">When all has to be done; null = not said.</param>
    public (IReadOnlyList<HandGroup> Groups, IReadOnlyList<HandBox> Left) Of(IEnumerable<HandBlock> blocks, DateTimeOffset now, DateTimeOffset? firstPlay)
    {
        var waiting = blocks.ToList();
        var groups = new List<HandGroup>();
        while (waiting.Count > 0)
        {
            var (chosen, rest) = Choose(waiting, now, firstPlay);
            if (chosen.Count > 0)
            {
                var group = GroupOf(chosen, now);
                groups.Add(group);
                now = group.To;
                waiting = rest;
            }
            else if (NextChange(now, firstPlay) is { } next && !(next >= firstPlay))
            {
                now = next;
            }
            else
            {
                break;
            }
        }

        return (groups, [.. waiting.Select(b => b.Box)]);
    }

    private (List<HandBlock> Chosen, List<HandBlock> Waiting) Choose(List<HandBlock> waiting, DateTimeOffset now, DateTimeOffset? firstPlay)
    {
        List<HandBlock> chosen = [], rest = [];
        foreach (var block in waiting)
        {
            var most = firstPlay is { } play ? play - now : TimeSpan.MaxValue;
            if (chosen.Count > 0 && block.Rank > chosen[0].Rank && chosen.Max(c => c.Length) is var longest && longest < most)
            {
                most = longest;
            }

            var (part, later) = block.Split(now, most, permits.May);
            if (part is not null && !chosen.Exists(c => ReferenceEquals(c.Controller, block.Controller)) && KeepsUp([.. chosen, part], now))
            {
                chosen.Add(part);
                if (later is not null)
                {
                    rest.Add(later);
                }
            }
            else
            {
                rest.Add(block);
            }
        }

        return (chosen, rest);
    }

    private bool KeepsUp(List<HandBlock> together, DateTimeOffset now)
    {
        var to = now + together.Max(b => b.Length);
        if (together.Exists(b => runs.Any(r => ReferenceEquals(r.Program.Controller, b.Controller) && r.Begins < to && r.Finishes > now)))
        {
            return false;
        }

        var capacity = pump.LeastIn(now, to);
        return double.IsPositiveInfinity(capacity)
            || ((together.Count == 1 || together.TrueForAll(b => b.FlowIsKnown)) && Asked(together, now, to) <= capacity + Tolerance);
    }

    /// <summary>The most that runs by itself may ask in a span, with the most that these boxes may.</summary>
    private double Asked(List<HandBlock> together, DateTimeOffset from, DateTimeOffset to) =>
        together.Sum(b => b.PeakLPerMin)
        + runs.Sum(r => r.Stations.Where(s => s.Begins < to && s.Ends > from).Select(s => s.Station.FlowLPerMin ?? 0).DefaultIfEmpty(0).Max());

    private HandGroup GroupOf(List<HandBlock> chosen, DateTimeOffset now)
    {
        var to = now + chosen.Max(b => b.Length);
        var capacity = pump.LeastIn(now, to);
        return new HandGroup(now, to, chosen.Sum(b => b.PeakLPerMin), double.IsPositiveInfinity(capacity) ? null : capacity, [.. chosen.Select(b => b.Box)]);
    }

    /// <summary>When something that runs by itself ends, or the pump gives more again; where play sets an end, also when a rule or an order does.</summary>
    private DateTimeOffset? NextChange(DateTimeOffset now, DateTimeOffset? firstPlay) => runs
        .SelectMany(r => r.Stations.Select(s => s.Ends))
        .Concat(pump.GivesMore)
        .Concat(firstPlay is null ? [] : permits.Changes)
        .Where(at => at > now)
        .Select(at => (DateTimeOffset?)at)
        .Min();
}
