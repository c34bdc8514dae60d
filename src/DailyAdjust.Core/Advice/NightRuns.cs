using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>One station's part of a run, UTC.</summary>
internal readonly record struct StationRun(Station Station, DateTimeOffset Begins, DateTimeOffset Ends);

/// <summary>One program's run with its stations.</summary>
internal sealed record PlannedRun(PlannedProgram Program, ProgramStart Start, double Percent, DateTimeOffset Begins, DateTimeOffset Finishes, IReadOnlyList<StationRun> Stations);

/// <summary>Lays the stations of every start one after another, as a controller runs them.</summary>
internal sealed class NightRuns(Site site)
{
    private readonly ILookup<string, Station> _stations = site.Stations.ToLookup(s => s.Key.Controller, StringComparer.Ordinal);

    /// <summary>All runs that start in a span, by controller, then by start.</summary>
    /// <param name="programs">All of the site's programs.</param>
    /// <param name="from">First instant.</param>
    /// <param name="to">End, excluded.</param>
    /// <param name="percentOf">A program's percentage; 0 = does not run.</param>
    public IReadOnlyList<PlannedRun> Between(IReadOnlyList<PlannedProgram> programs, DateTimeOffset from, DateTimeOffset to, Func<ProgramKey, double> percentOf)
    {
        var runs = new List<PlannedRun>();
        foreach (var controller in site.Controllers)
        {
            var due = programs
                .Where(p => ReferenceEquals(p.Controller, controller) && percentOf(p.Key) > 0)
                .SelectMany(p => ProgramStarts.From(site, controller, p.Program, from).TakeWhile(s => s.At < to).Select(s => (Program: p, Start: s)))
                .OrderBy(r => r.Start.At);
            var free = DateTimeOffset.MinValue;
            foreach (var (program, start) in due)
            {
                var begins = controller.Overlap == ProgramOverlap.Stack && free > start.At ? free : start.At;
                var run = Lay(program, start, begins, percentOf(program.Key));
                runs.Add(run);
                free = run.Finishes;
            }
        }

        return runs;
    }

    /// <summary>When a start's last station ends, where nothing pushes it back.</summary>
    public DateTimeOffset Finish(PlannedProgram program, DateTimeOffset begins, double percent) =>
        Lay(program, new ProgramStart(default, begins), begins, percent).Finishes;

    private PlannedRun Lay(PlannedProgram program, ProgramStart start, DateTimeOffset begins, double percent)
    {
        var stations = new List<StationRun>();
        var now = begins;
        foreach (var station in _stations[program.Key.Controller])
        {
            if (!station.BaseMinutes.TryGetValue(program.Key.Program, out var baseMinutes))
            {
                continue;
            }

            var minutes = RunMinutes.At(program.Controller, baseMinutes, percent);
            if (minutes <= 0)
            {
                continue;
            }

            var at = stations.Count > 0 ? now + program.Controller.StationGap : now;
            now = at.AddMinutes(minutes);
            stations.Add(new StationRun(station, at, now));
        }

        return new PlannedRun(program, start, percent, begins, now, stations);
    }
}
