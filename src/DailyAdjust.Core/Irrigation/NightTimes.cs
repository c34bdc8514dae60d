using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>
/// When each station ran in the starts of one date, from the order of the stations and the starts of that date and, where a controller
/// lets a later program wait, of the date before.
/// </summary>
internal sealed class NightTimes
{
    private readonly Dictionary<(ProgramKey Program, DateTimeOffset Start, StationKey Station), StationRun> _runs = [];

    /// <param name="laying">The site's.</param>
    /// <param name="controllers">The site's.</param>
    /// <param name="startsOf">A controller's starts of the date.</param>
    /// <param name="startsBefore">A controller's starts of the date before.</param>
    public NightTimes(NightRuns laying, IEnumerable<Controller> controllers, Func<string, IEnumerable<DayStart>> startsOf, Func<string, IEnumerable<DayStart>> startsBefore)
    {
        foreach (var controller in controllers)
        {
            var starts = startsOf(controller.Id);
            var all = controller.Overlap == ProgramOverlap.Stack ? startsBefore(controller.Id).Concat(starts) : starts;
            foreach (var run in laying.InTurn(controller, [.. all.Where(s => !s.Setting.IsOff).Select(s => s.Due)]))
            {
                foreach (var station in run.Stations)
                {
                    _runs[(run.Program.Key, run.Start.At, station.Station.Key)] = station;
                }
            }
        }
    }

    /// <summary>Null = it has no minutes in that start.</summary>
    public StationRun? Of(ProgramKey program, ProgramStart start, StationKey station) => _runs.TryGetValue((program, start.At, station), out var run) ? run : null;
}
