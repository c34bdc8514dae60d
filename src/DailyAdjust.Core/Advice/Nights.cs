using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The nights that a morning decides about: what runs at any percentages, and what of it does not fit.</summary>
internal sealed class Nights
{
    private const int Most = 7;
    private readonly AdviceContext _context;
    private readonly PumpLoad _pump;
    private readonly NightTroubles _troubles;
    private readonly DateTimeOffset _to;
    private readonly HashSet<(ProgramKey Program, DateTimeOffset At)> _takenOut;
    private readonly StationsOut _stationsOut;
    private readonly IReadOnlyDictionary<ProgramKey, double> _growInPercents;

    /// <summary>By program as it stands or is moved.</summary>
    private readonly Dictionary<PlannedProgram, IReadOnlyList<StartOfNight>> _startsOf = new(ReferenceEqualityComparer.Instance);
    private StartsOfNights? _starts;

    /// <param name="context">The morning.</param>
    /// <param name="log">Its `pump` entries reduce the capacity from their time until their end.</param>
    /// <param name="takenOut">Starts that must not run though their programs may.</param>
    /// <param name="growInPercents">What programs that are left out tonight run at in the grow-in that begins before the next visit; null = none does.</param>
    public Nights(
        AdviceContext context, IReadOnlyList<LogEntry> log, IEnumerable<(ProgramKey Program, DateTimeOffset At)> takenOut, IReadOnlyDictionary<ProgramKey, double>? growInPercents = null)
    {
        _context = context;
        _growInPercents = growInPercents ?? new Dictionary<ProgramKey, double>();
        _takenOut = [.. takenOut];
        _stationsOut = new StationsOut(context);
        _pump = new PumpLoad(context.Site, log);
        _troubles = new NightTroubles(context.Site, _pump);
        var visits = context.Programs.Select(p => context.Visits.NextAfter(p, context.Date));
        var nights = Math.Min(Most, visits.DefaultIfEmpty(context.Date.AddDays(1)).Max().DayNumber - context.Date.DayNumber);
        _to = context.Site.RoundDone(context.Date.AddDays(nights));
    }

    private Site Site => _context.Site;

    /// <summary>Starts from here on are not looked at, UTC.</summary>
    public DateTimeOffset Ends => _to;

    /// <summary>All runs, by controller, then by start.</summary>
    /// <param name="percentOf">A program's percentage; 0 = does not run.</param>
    /// <param name="programs">Those that are looked at; null = all, with the site's starts.</param>
    /// <param name="movedBy">By how much some of them start otherwise than on the site; null = none does.</param>
    public IReadOnlyList<PlannedRun> Runs(Func<ProgramKey, double> percentOf, IReadOnlyList<PlannedProgram>? programs = null, IReadOnlyDictionary<ProgramKey, TimeSpan>? movedBy = null)
    {
        var starts = programs is null && movedBy is null ? _starts ??= Starts(_context.Programs, null) : Starts(programs ?? _context.Programs, movedBy);
        return starts.At((key, start) => start.GrowIn is not null && _growInPercents.TryGetValue(key, out var percent) ? percent : percentOf(key));
    }

    public NightFit Fit(IReadOnlyList<PlannedRun> runs, IReadOnlyList<FitCut> cuts) => new(
        [.. runs.Select(r => new ProgramRun(r.Start.Date, r.Program.Key, r.Begins, r.Finishes))],
        [.. ProgramOverlaps.Of(_context.Laying, runs)],
        [.. runs.Where(r => WindowMinutes.Outside(Site, r) > 0).Select(r => new OutsideWindow(r.Program.Key.Controller, r.Program.Key.Program, r.Start.Date, r.Begins, r.Finishes, r.Due.GrowIn is not null))],
        [.. _pump.Exceeded(runs)],
        cuts)
    {
        Clashes = [.. StationClashes.Of(Site, runs)],
        Reaching = [.. ReachingRuns.Of(_context, runs)],
    };

    /// <summary>Programs that have a part in anything that does not fit.</summary>
    public IReadOnlySet<ProgramKey> Misfits(IReadOnlyList<PlannedRun> runs) =>
        Involved(Troubles(runs))
            .Concat(runs.Where(r => r.Due.GrowIn is null && WindowMinutes.Outside(Site, r) > 0).Select(r => r.Program.Key))
            .Concat(ProgramOverlaps.AtOnce(runs))
            .Concat(StationClashes.Programs(Site, runs))
            .ToHashSet();

    /// <summary>Tells whether a program fits in: in the window, with its own box and beside what all other boxes run, and where no order or watering rule is against it.</summary>
    /// <param name="program">Which; its runs are those of the box's with its key.</param>
    /// <param name="others">Runs of all other boxes.</param>
    /// <returns>A judge of the runs of the whole box, and of by how much the program's own come otherwise than on the site.</returns>
    public Func<IReadOnlyList<PlannedRun>, TimeSpan, bool> Beside(PlannedProgram program, IReadOnlyList<PlannedRun> others)
    {
        var flow = _pump.Flow(others);
        var stacks = program.Controller.Overlap == ProgramOverlap.Stack;
        return (box, by) =>
        {
            List<PlannedRun> own = [.. box.Where(r => r.Program.Key == program.Key)];

            // Where programs wait for one another, a start moves all that follow.
            var moved = stacks ? box : own;
            return moved.All(r => WindowMinutes.Outside(Site, r) <= 0)
                && (stacks || !ProgramOverlaps.AnyAtOnce(own, box))
                && own.All(r => !IsForbidden(r, by))
                && moved.All(r => _pump.HasRoom(r, flow))
                && !StationClashes.Any(Site, moved, [.. others, .. box]);
        };
    }

    /// <summary>Runs that reach into what forbids their water, told to start earlier only where that fits beside everything else, one after another.</summary>
    /// <param name="reaching">At the present starts.</param>
    /// <param name="starts">Other starts that are proposed.</param>
    public IReadOnlyList<ReachingRun> WithEarlierThatFit(IReadOnlyList<ReachingRun> reaching, ProposedStarts starts)
    {
        if (!reaching.Any(r => r.EarlierBy is not null))
        {
            return reaching;
        }

        List<PlannedRun> all = [.. starts.Runs(this)];
        var told = new List<ReachingRun>();
        foreach (var reach in reaching)
        {
            var at = starts.MovedBy.ContainsKey(reach.Program) ? -1 : all.FindIndex(r => r.Program.Key == reach.Program && r.Start == reach.Start);
            var earlier = at < 0 || reach.EarlierBy is not { } by ? null : EarlierThatFits(all, at, TimeSpan.FromMinutes(Math.Ceiling(by.TotalMinutes)));
            if (earlier is not null)
            {
                all[at] = earlier;
            }

            told.Add(earlier is null ? reach with { EarlierBy = null } : reach);
        }

        return told;
    }

    private StartsOfNights Starts(IReadOnlyList<PlannedProgram> programs, IReadOnlyDictionary<ProgramKey, TimeSpan>? movedBy) => _context.Laying.Of(programs, p =>
    {
        // Where starts are looked for, one program is moved and those beside it stand: each is asked once.
        if (!_startsOf.TryGetValue(p, out var starts))
        {
            _startsOf[p] = starts = NightRuns.StartsOf(
                _context.GrowIns, p, _context.RoundDone, _to, (key, start) => _takenOut.Contains((key, start.At - (movedBy?.GetValueOrDefault(key) ?? default))), _stationsOut.Of);
        }

        return starts;
    });

    private PlannedRun? EarlierThatFits(List<PlannedRun> all, int at, TimeSpan by)
    {
        var run = all[at];
        var start = run.Start.At - by;
        var earlier = run with { Due = run.Due with { Start = new ProgramStart(run.Start.Date, start) }, Begins = start };
        List<PlannedRun> others = [.. all.Where((_, i) => i != at)];
        var box = others.FindAll(r => ReferenceEquals(r.Program.Controller, run.Program.Controller));
        return start >= _context.RoundDone
            && WindowMinutes.Outside(Site, earlier) <= 0
            && !ProgramOverlaps.AnyAtOnce([earlier], box)
            && !IsForbidden(earlier, -by)
            && _pump.HasRoom(earlier, _pump.Flow(others))
            && !StationClashes.Any(Site, [earlier], [.. others, earlier])
            ? earlier
            : null;
    }

    /// <summary>A station of a program that alone asks more than the pump gives at any start that is looked for; null = there is none.</summary>
    /// <param name="program">Which.</param>
    /// <param name="runs">Of the nights, its own among them.</param>
    /// <param name="around">How far its start may be moved, either way.</param>
    public BeyondPump? StationBeyondPump(ProgramKey program, IReadOnlyList<PlannedRun> runs, TimeSpan around)
    {
        foreach (var run in runs.Where(r => r.Program.Key == program))
        {
            foreach (var station in run.Sequence.Parts.Select(p => p.Station))
            {
                if (station.FlowLPerMin is { } flow && _pump.IsBeyond(flow, run.Begins - around, run.Finishes + around, out var gives))
                {
                    return new BeyondPump(program, station.Key, flow, gives);
                }
            }
        }

        return null;
    }

    /// <summary>Programs of whose water less would mend what does not fit.</summary>
    public IReadOnlySet<ProgramKey> Involved(IReadOnlyList<NightTrouble> troubles) => _troubles.Programs(troubles);

    /// <summary>What does not fit and whose length has a part in it: a run past the window's closing, or runs that together ask too much of the pump.</summary>
    public IReadOnlyList<NightTrouble> Troubles(IReadOnlyList<PlannedRun> runs) => _troubles.Of(runs);

    /// <summary>A moved start that an order or a watering rule is against, in whole or for ground that its present start may water; or that is still on when one begins.</summary>
    private bool IsForbidden(PlannedRun run, TimeSpan by) =>
        Prohibitions.OrdersOver(_context, run.Program, run.Start.At).Count > 0
        || Prohibitions.RulesOver(_context, run.Program, run.Start).Count > 0
        || Prohibitions.IsForbiddenMore(_context, run.Program, run.Start, run.Start.At - by)
        || ReachingRuns.Of(_context, [run]).Any();
}
