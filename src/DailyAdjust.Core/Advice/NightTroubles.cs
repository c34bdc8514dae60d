using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What does not fit and smaller numbers could mend, at any numbers. The nights are laid out many times and differ in one box: one whose runs are those of the last time is not looked at again.</summary>
/// <param name="site">Its boxes and its window.</param>
/// <param name="pump">What it gives.</param>
internal sealed class NightTroubles(Site site, PumpLoad pump)
{
    private readonly Box[] _boxes = [.. site.Controllers.Select(c => new Box(c))];
    private readonly bool _isLimited = !pump.IsUnlimited;

    /// <summary>What all runs ask, and when the pump gives otherwise, in order of time.</summary>
    private Change[] _changes = [.. pump.Turns.Select(at => new Change(at.UtcTicks, -1, 0, 0)).Order()];
    private Change[] _before = [];
    private int _count = pump.Turns.Count();

    /// <summary>Runs past the window's closing, in the order of the runs; then what asks too much of the pump, in order of time.</summary>
    /// <param name="runs">By controller, then by start.</param>
    public IReadOnlyList<NightTrouble> Of(IReadOnlyList<PlannedRun> runs)
    {
        Take(runs);
        List<NightTrouble> troubles = [.. _boxes.SelectMany(b => b.PastClosing)];
        foreach (var step in TooMuch())
        {
            var from = new DateTimeOffset(step.FromTicks, TimeSpan.Zero);
            troubles.Add(new NightTrouble(IsWindow: false, Asking(), step.Gives, new TimeSpan(step.ToTicks - step.FromTicks).TotalMinutes, from));
        }

        return troubles;
    }

    /// <summary>Programs with a part in what was found.</summary>
    public HashSet<ProgramKey> Programs(IReadOnlyList<NightTrouble> troubles)
    {
        var programs = new HashSet<ProgramKey>();
        foreach (var trouble in troubles)
        {
            foreach (var start in trouble.Asking)
            {
                // Where programs wait for one another, an earlier one's length counts too.
                var controller = trouble.IsWindow ? site.Controllers.First(c => string.Equals(c.Id, start.Program.Controller, StringComparison.Ordinal)) : null;
                programs.UnionWith(controller?.Overlap == ProgramOverlap.Stack ? controller.Programs.Select(p => new ProgramKey(controller.Id, p.Id)) : [start.Program]);
            }
        }

        return programs;
    }

    private void Take(IReadOnlyList<PlannedRun> runs)
    {
        var next = 0;
        var fresh = new List<Change>();
        for (var i = 0; i < _boxes.Length; i++)
        {
            var from = next;
            while (next < runs.Count && ReferenceEquals(runs[next].Program.Controller, _boxes[i].Controller))
            {
                next++;
            }

            if (_boxes[i].Take(runs, from, next))
            {
                AddChanges(fresh, i);
                _boxes[i].PastClosing = [.. _boxes[i].Runs.Where(r => WindowMinutes.BeginsInside(site, r) && WindowMinutes.Outside(site, r) > 0).Select(PastClosing)];
            }
        }

        if (next < runs.Count)
        {
            throw new ArgumentException($"Runs come box by box in the site's order; {runs[next].Program.Key} does not.", nameof(runs));
        }

        Merge(fresh);
    }

    private NightTrouble PastClosing(PlannedRun run) =>
        new(IsWindow: true, [new StartAsking(run.Program.Key, run.Start.At, 1)], 0, WindowMinutes.Outside(site, run), WindowMinutes.ClosingAfter(site.Clock, site.Window!, run.Begins));

    private void AddChanges(List<Change> changes, int box)
    {
        var runs = _boxes[box].Runs;
        for (var run = 0; run < runs.Count && _isLimited; run++)
        {
            var start = runs[run].Begins.UtcTicks;
            foreach (var part in runs[run].Sequence.Parts)
            {
                if (part.Station.FlowLPerMin is { } litres and > 0)
                {
                    changes.Add(new Change(start + part.Begins.Ticks, box, run, litres));
                    changes.Add(new Change(start + part.Ends.Ticks, box, run, -litres));
                }
            }
        }
    }

    /// <summary>Puts the changes of boxes whose runs are others now in the place of those that they had.</summary>
    private void Merge(List<Change> fresh)
    {
        fresh.Sort();
        (_before, _changes) = (_changes, _before);
        var (had, next, count) = (_count, 0, 0);
        if (_changes.Length < had + fresh.Count)
        {
            _changes = new Change[2 * (had + fresh.Count)];
        }

        for (var old = 0; old < had; old++)
        {
            ref readonly var change = ref _before[old];
            if (change.Box >= 0 && _boxes[change.Box].IsOther)
            {
                continue;
            }

            while (next < fresh.Count && fresh[next].CompareTo(change) < 0)
            {
                _changes[count++] = fresh[next++];
            }

            _changes[count++] = change;
        }

        fresh.CopyTo(next, _changes, count, fresh.Count - next);
        _count = count + fresh.Count - next;
    }

    /// <summary>Steps from one change to the next in which too much is asked. While one is looked at, its boxes know what they ask.</summary>
    private IEnumerable<(long FromTicks, long ToTicks, double Gives)> TooMuch()
    {
        long flow = 0;
        for (var i = 0; i < _count;)
        {
            var at = _changes[i].AtTicks;
            for (; i < _count && _changes[i].AtTicks == at; i++)
            {
                var change = _changes[i];
                if (change.Box >= 0)
                {
                    flow += PumpLoad.Units(change.LPerMin);
                    _boxes[change.Box].Asks[change.Run] = Math.Max(0, change.LPerMin);
                }
            }

            if (i < _count && pump.IsTooMuch(PumpLoad.LitresPerMin(flow), new DateTimeOffset(at, TimeSpan.Zero), out var gives))
            {
                yield return (at, _changes[i].AtTicks, gives);
            }
        }
    }

    private List<StartAsking> Asking()
    {
        var asking = new List<StartAsking>();
        foreach (var box in _boxes)
        {
            for (var i = 0; i < box.Runs.Count; i++)
            {
                if (box.Asks[i] > 0)
                {
                    asking.Add(new StartAsking(box.Runs[i].Program.Key, box.Runs[i].Start.At, box.Asks[i]));
                }
            }
        }

        return asking;
    }

    /// <summary>A run begins or ends to ask water, or the pump begins to give otherwise.</summary>
    /// <param name="AtTicks">UTC.</param>
    /// <param name="Box">Place of its box in the site's order; -1 = it is the pump's change.</param>
    /// <param name="Run">Place among the runs of its box.</param>
    /// <param name="LPerMin">Below 0 where it ends.</param>
    private readonly record struct Change(long AtTicks, int Box, int Run, double LPerMin) : IComparable<Change>
    {
        /// <summary>In order of time; what ends, ends before anything begins.</summary>
        public int CompareTo(Change other) => AtTicks != other.AtTicks ? AtTicks.CompareTo(other.AtTicks) : (LPerMin > 0).CompareTo(other.LPerMin > 0);
    }

    private sealed class Box(Controller controller)
    {
        public Controller Controller { get; } = controller;

        public List<PlannedRun> Runs { get; private set; } = [];

        /// <summary>By run: what it asks at the instant that is looked at, L/min.</summary>
        public double[] Asks { get; private set; } = [];

        /// <summary>Its runs are not those of the time before.</summary>
        public bool IsOther { get; private set; }

        public IReadOnlyList<NightTrouble> PastClosing { get; set; } = [];

        /// <returns>Whether they are others than before.</returns>
        public bool Take(IReadOnlyList<PlannedRun> runs, int from, int to)
        {
            IsOther = Runs.Count != to - from;
            for (var i = 0; i < Runs.Count && !IsOther; i++)
            {
                IsOther = !ReferenceEquals(Runs[i], runs[from + i]);
            }

            if (IsOther)
            {
                Runs = [.. Enumerable.Range(from, to - from).Select(i => runs[i])];
                Asks = new double[Runs.Count];
            }

            return IsOther;
        }
    }
}
