using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One station's part of a run, UTC.</summary>
internal readonly record struct StationRun(Station Station, DateTimeOffset Begins, DateTimeOffset Ends);

/// <summary>One program's run with its stations.</summary>
internal sealed record PlannedRun(PlannedProgram Program, ProgramStart Start, double Percent, DateTimeOffset Begins, DateTimeOffset Finishes, IReadOnlyList<StationRun> Stations);

/// <summary>A start that is due, at what it runs.</summary>
/// <param name="Program">Which.</param>
/// <param name="Start">When.</param>
/// <param name="Percent">Of the base minutes, above 0.</param>
internal readonly record struct DueStart(PlannedProgram Program, ProgramStart Start, double Percent)
{
    /// <summary>What a grow-in runs in it; null = the program's own minutes.</summary>
    public (GrowIn GrowIn, GrowInDay Day)? GrowIn { get; init; }

    /// <summary>A station's minutes in it, as the controller rounds them.</summary>
    public double Minutes(double baseMinutes) =>
        GrowIn is { } grows ? grows.GrowIn.MinutesOf(grows.Day, baseMinutes) : RunMinutes.At(Program.Controller, baseMinutes, Percent);
}

/// <summary>Lays the stations of every start one after another, as a controller runs them.</summary>
internal sealed class NightRuns(Site site)
{
    private readonly ILookup<string, Station> _stations = site.Stations.ToLookup(s => s.Key.Controller, StringComparer.Ordinal);

    /// <summary>All runs that start in a span, by controller, then by start.</summary>
    /// <param name="programs">All of the site's programs.</param>
    /// <param name="from">First instant.</param>
    /// <param name="to">End, excluded.</param>
    /// <param name="percentOf">A program's percentage; 0 = does not run.</param>
    public IReadOnlyList<PlannedRun> Between(IReadOnlyList<PlannedProgram> programs, DateTimeOffset from, DateTimeOffset to, Func<ProgramKey, double> percentOf) =>
        [.. site.Controllers.SelectMany(controller => InTurn(controller, programs
            .Where(p => ReferenceEquals(p.Controller, controller) && percentOf(p.Key) > 0)
            .SelectMany(p => ProgramStarts.From(site, controller, p.Program, from).TakeWhile(s => s.At < to).Select(s => new DueStart(p, s, percentOf(p.Key))))))];

    /// <summary>The runs of one controller's starts, by start; where it stacks, a later one waits until the earlier one has ended.</summary>
    public IReadOnlyList<PlannedRun> InTurn(Controller controller, IEnumerable<DueStart> due)
    {
        var runs = new List<PlannedRun>();
        var free = DateTimeOffset.MinValue;
        foreach (var start in due.OrderBy(d => d.Start.At))
        {
            var run = Lay(start, controller.Overlap == ProgramOverlap.Stack && free > start.Start.At ? free : start.Start.At);
            runs.Add(run);
            free = run.Finishes;
        }

        return runs;
    }

    /// <summary>When a start's last station ends, where nothing pushes it back.</summary>
    public DateTimeOffset Finish(PlannedProgram program, DateTimeOffset begins, double percent) =>
        Lay(new DueStart(program, new ProgramStart(default, begins), percent), begins).Finishes;

    private PlannedRun Lay(DueStart due, DateTimeOffset begins)
    {
        var program = due.Program;
        var stations = new List<StationRun>();
        var now = begins;
        foreach (var station in _stations[program.Key.Controller])
        {
            if (!station.BaseMinutes.TryGetValue(program.Key.Program, out var baseMinutes))
            {
                continue;
            }

            var minutes = due.Minutes(baseMinutes);
            if (minutes <= 0)
            {
                continue;
            }

            var at = stations.Count > 0 ? now + program.Controller.StationGap : now;
            now = at.AddMinutes(minutes);
            stations.Add(new StationRun(station, at, now));
        }

        return new PlannedRun(program, due.Start, due.Percent, begins, now, stations);
    }
}
