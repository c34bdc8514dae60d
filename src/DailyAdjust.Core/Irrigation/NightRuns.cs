using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One program's run with its stations, UTC.</summary>
internal sealed record PlannedRun(DueStart Due, DateTimeOffset Begins, StationSequence Sequence)
{
    public PlannedProgram Program => Due.Program;

    public ProgramStart Start => Due.Start;

    public double Percent => Due.Percent;

    /// <summary>When its last station ends.</summary>
    public DateTimeOffset Finishes => Begins + Sequence.Length;

    /// <summary>In the order in which they run.</summary>
    public IEnumerable<StationRun> Stations => Sequence.Parts.Select(p => new StationRun(p.Station, Begins + p.Begins, Begins + p.Ends));
}

/// <summary>A start that is due, at what it runs.</summary>
/// <param name="Program">Which.</param>
/// <param name="Start">When.</param>
/// <param name="Percent">Of the base minutes, above 0.</param>
internal readonly record struct DueStart(PlannedProgram Program, ProgramStart Start, double Percent)
{
    /// <summary>A grow-in whose minutes it runs, at the percentage; null = the program's own.</summary>
    public (GrowIn GrowIn, GrowInDay Day)? GrowIn { get; init; }

    /// <summary>Stations that are taken out of it; null = all run. Starts with the same ones share one set.</summary>
    public IReadOnlySet<StationKey>? Out { get; init; }

    /// <summary>A station's minutes in it, as the controller rounds them.</summary>
    public double Minutes(double baseMinutes) =>
        RunMinutes.At(Program.Controller, GrowIn is { } grows ? grows.GrowIn.MinutesOf(grows.Day, baseMinutes) : baseMinutes, Percent);
}

/// <summary>Lays the stations of every start one after another, as a controller runs them.</summary>
internal sealed class NightRuns(Site site)
{
    /// <summary>Sequences: a replay of years asks for ever new percentages and sets of stations, and none of them may fill the memory.</summary>
    private const int MostKept = 8192;

    private readonly ILookup<string, Station> _stations = site.Stations.ToLookup(s => s.Key.Controller, StringComparer.Ordinal);
    private readonly Dictionary<(ProgramKey Program, double Percent, IReadOnlySet<StationKey>? Out), StationSequence> _sequences = [];

    /// <summary>All runs that start in a span, by controller, then by start.</summary>
    /// <param name="growIns">Know which starts there are.</param>
    /// <param name="programs">All of the site's programs.</param>
    /// <param name="from">First instant.</param>
    /// <param name="to">End, excluded.</param>
    /// <param name="percentOf">A program's percentage in a start; 0 = does not run.</param>
    /// <param name="isOut">Whether a start is taken out of its program; null = none is.</param>
    /// <param name="stationsOut">Stations that are taken out of a start; null = none is.</param>
    public IReadOnlyList<PlannedRun> Between(
        GrowIns growIns, IReadOnlyList<PlannedProgram> programs, DateTimeOffset from, DateTimeOffset to, Func<ProgramKey, StartInForce, double> percentOf,
        Func<ProgramKey, ProgramStart, bool>? isOut = null, Func<PlannedProgram, ProgramStart, IReadOnlySet<StationKey>?>? stationsOut = null) =>
        StartsBetween(growIns, programs, from, to, isOut, stationsOut).At(percentOf);

    /// <summary>The same starts, to be laid out at several percentages.</summary>
    public StartsOfNights StartsBetween(
        GrowIns growIns, IReadOnlyList<PlannedProgram> programs, DateTimeOffset from, DateTimeOffset to,
        Func<ProgramKey, ProgramStart, bool>? isOut = null, Func<PlannedProgram, ProgramStart, IReadOnlySet<StationKey>?>? stationsOut = null) =>
        Of(programs, p => StartsOf(growIns, p, from, to, isOut, stationsOut));

    /// <summary>Starts of programs, by controller.</summary>
    /// <param name="programs">In the order of their controllers.</param>
    /// <param name="startsOf">A program's.</param>
    public StartsOfNights Of(IReadOnlyList<PlannedProgram> programs, Func<PlannedProgram, IReadOnlyList<StartOfNight>> startsOf)
    {
        var programsOf = programs.ToLookup(p => p.Key.Controller, StringComparer.Ordinal);
        return new StartsOfNights(this, [.. site.Controllers.Where(c => programsOf.Contains(c.Id)).Select(c => new StartsOfBox(c, [.. programsOf[c.Id].SelectMany(startsOf)]))]);
    }

    /// <summary>A program's starts in a span, in order.</summary>
    public static IReadOnlyList<StartOfNight> StartsOf(
        GrowIns growIns, PlannedProgram program, DateTimeOffset from, DateTimeOffset to,
        Func<ProgramKey, ProgramStart, bool>? isOut = null, Func<PlannedProgram, ProgramStart, IReadOnlySet<StationKey>?>? stationsOut = null)
    {
        var starts = new List<StartOfNight>();
        foreach (var start in growIns.From(program, from))
        {
            if (start.Start.At >= to)
            {
                break;
            }

            if (isOut?.Invoke(program.Key, start.Start) != true)
            {
                starts.Add(new StartOfNight(program, start, stationsOut?.Invoke(program, start.Start)));
            }
        }

        return starts;
    }

    /// <summary>The runs of one controller's starts, by start; where it stacks, a later one waits until the earlier one has ended.</summary>
    /// <param name="controller">Which.</param>
    /// <param name="due">Its starts; they are put in order.</param>
    public IReadOnlyList<PlannedRun> InTurn(Controller controller, List<DueStart> due)
    {
        var runs = new List<PlannedRun>(due.Count);
        var free = DateTimeOffset.MinValue;
        FewEvents.Sort(due, static (in DueStart one, in DueStart other) => one.Start.At > other.Start.At);
        foreach (var start in due)
        {
            var begins = controller.Overlap == ProgramOverlap.Stack && free > start.Start.At ? free : start.Start.At;
            var run = new PlannedRun(start, begins, SequenceOf(start));
            runs.Add(run);
            free = run.Finishes;
        }

        return runs;
    }

    /// <summary>From a start to the end of its last station.</summary>
    public TimeSpan LengthOf(DueStart start) => SequenceOf(start).Length;

    private StationSequence SequenceOf(DueStart due)
    {
        var (program, percent) = (due.Program, due.Percent);
        if (due.GrowIn is not null)
        {
            return Lay(due);
        }

        if (!_sequences.TryGetValue((program.Key, percent, due.Out), out var sequence))
        {
            if (_sequences.Count == MostKept)
            {
                _sequences.Clear();
            }

            _sequences[(program.Key, percent, due.Out)] = sequence = Lay(due);
        }

        return sequence;
    }

    private StationSequence Lay(DueStart due) => new(
        due.Program.Controller,
        _stations[due.Program.Key.Controller].Where(s => due.Out?.Contains(s.Key) != true).Select(s => (s, s.BaseMinutes.TryGetValue(due.Program.Key.Program, out var minutes) ? due.Minutes(minutes) : 0)));
}
