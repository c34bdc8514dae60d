using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>One program's run with its stations, UTC.</summary>
internal sealed record PlannedRun(PlannedProgram Program, ProgramStart Start, double Percent, DateTimeOffset Begins, StationSequence Sequence)
{
    /// <summary>When its last station ends.</summary>
    public DateTimeOffset Finishes => Begins + Sequence.Length;

    /// <summary>In the order in which they run.</summary>
    public IEnumerable<StationRun> Stations => Sequence.Parts.Select(p => new StationRun(p.Station, Begins + p.Begins, Begins + p.Ends));
}

/// <summary>Lays the stations of every start one after another, as a controller runs them.</summary>
internal sealed class NightRuns(Site site)
{
    private readonly ILookup<string, Station> _stations = site.Stations.ToLookup(s => s.Key.Controller, StringComparer.Ordinal);
    private readonly Dictionary<(ProgramKey Program, double Percent), StationSequence> _sequences = [];

    /// <summary>All runs that start in a span, by controller, then by start.</summary>
    /// <param name="programs">All of the site's programs.</param>
    /// <param name="from">First instant.</param>
    /// <param name="to">End, excluded.</param>
    /// <param name="percentOf">A program's percentage; 0 = does not run.</param>
    public IReadOnlyList<PlannedRun> Between(IReadOnlyList<PlannedProgram> programs, DateTimeOffset from, DateTimeOffset to, Func<ProgramKey, double> percentOf)
    {
        var runs = new List<PlannedRun>();
        var programsOf = programs.ToLookup(p => p.Key.Controller, StringComparer.Ordinal);
        foreach (var controller in site.Controllers)
        {
            var due = programsOf[controller.Id]
                .Select(p => (Program: p, Percent: percentOf(p.Key)))
                .Where(p => p.Percent > 0)
                .SelectMany(p => ProgramStarts.From(site, controller, p.Program.Program, from).TakeWhile(s => s.At < to).Select(s => (p.Program, Start: s, p.Percent)))
                .OrderBy(r => r.Start.At);
            var free = DateTimeOffset.MinValue;
            foreach (var (program, start, percent) in due)
            {
                var begins = controller.Overlap == ProgramOverlap.Stack && free > start.At ? free : start.At;
                var run = new PlannedRun(program, start, percent, begins, SequenceOf(program, percent));
                runs.Add(run);
                free = run.Finishes;
            }
        }

        return runs;
    }

    /// <summary>When a start's last station ends, where nothing pushes it back.</summary>
    public DateTimeOffset Finish(PlannedProgram program, DateTimeOffset begins, double percent) => begins + SequenceOf(program, percent).Length;

    private StationSequence SequenceOf(PlannedProgram program, double percent)
    {
        if (!_sequences.TryGetValue((program.Key, percent), out var sequence))
        {
            sequence = new StationSequence(program.Controller, _stations[program.Key.Controller], program.Key.Program, percent);
            _sequences[(program.Key, percent)] = sequence;
        }

        return sequence;
    }
}
