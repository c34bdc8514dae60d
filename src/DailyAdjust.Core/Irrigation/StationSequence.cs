using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>One station's part of a run, UTC.</summary>
internal readonly record struct StationRun(Station Station, DateTimeOffset Begins, DateTimeOffset Ends);

/// <summary>How a program's stations follow one another. At one percentage the same on every night: laid out once.</summary>
internal sealed class StationSequence
{
    private readonly List<Part> _parts = [];

    /// <param name="controller">Its minutes and the gap between its stations.</param>
    /// <param name="stations">Of the controller, in its order.</param>
    /// <param name="program">Which of its programs.</param>
    /// <param name="minutesOf">From a station's base minutes the minutes that it runs, 0 or more.</param>
    public StationSequence(Controller controller, IEnumerable<Station> stations, string program, Func<double, double> minutesOf)
    {
        var now = TimeSpan.Zero;
        foreach (var station in stations)
        {
            if (!station.BaseMinutes.TryGetValue(program, out var baseMinutes))
            {
                continue;
            }

            var minutes = minutesOf(baseMinutes);
            if (minutes <= 0)
            {
                continue;
            }

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
