using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One station's part of a run, UTC.</summary>
internal readonly record struct StationRun(Station Station, DateTimeOffset Begins, DateTimeOffset Ends);

/// <summary>How a program's stations follow one another. At one percentage the same on every night: laid out once.</summary>
internal sealed class StationSequence
{
    private readonly List<Part> _parts = [];

    /// <param name="controller">Knows the gap between its stations.</param>
    /// <param name="stations">In the controller's order, each with the minutes that it runs; one that runs none takes no time.</param>
    public StationSequence(Controller controller, IEnumerable<(Station Station, double Minutes)> stations)
    {
        var now = TimeSpan.Zero;
        foreach (var (station, minutes) in stations.Where(s => s.Minutes > 0))
        {
            var begins = _parts.Count > 0 ? now + controller.StationGap : now;

            // To the nearest tick: ten runs of 0.1 min are a minute.
            now = begins + TimeSpan.FromTicks((long)Math.Round(minutes * TimeSpan.TicksPerMinute));
            _parts.Add(new Part(station, begins, now));
        }
    }

    /// <summary>In the order in which they run.</summary>
    public IReadOnlyList<Part> Parts => _parts;

    /// <summary>From the start to the end of the last station.</summary>
    public TimeSpan Length => _parts.Count > 0 ? _parts[^1].Ends : TimeSpan.Zero;

    /// <summary>One station, counted from the program's start.</summary>
    internal readonly record struct Part(Station Station, TimeSpan Begins, TimeSpan Ends);
}
