using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>One station's day and the 44 days before it; index 0 is the day, 1 the day before it.</summary>
internal sealed class StationHistory
{
    private readonly StationDay?[] _days = new StationDay?[LookBack.Days];

    /// <param name="date">The day.</param>
    /// <param name="today">The station's day.</param>
    /// <param name="before">Earlier days in order of date.</param>
    public StationHistory(DateOnly date, StationDay today, IReadOnlyList<WeatherDay> before)
    {
        _days[0] = today;
        for (var i = before.Count - 1; i >= 0; i--)
        {
            var back = date.DayNumber - before[i].Date.DayNumber;
            if (back >= LookBack.Days)
            {
                break;
            }

            _days[back] = back > 0 ? before[i].StationAt(today.Station) : _days[back];
        }
    }

    public StationDay Today => _days[0]!;

    /// <summary>So many days back, 0 to 44; null = nothing is known of it.</summary>
    public StationDay? this[int daysBack] => _days[daysBack];

    /// <summary>A quantity's known values of the last days, the day itself first.</summary>
    public List<double> Last(int days, Func<StationDay, double?> value)
    {
        List<double> known = [];
        for (var back = 0; back < days; back++)
        {
            if (_days[back] is { } day && value(day) is { } v)
            {
                known.Add(v);
            }
        }

        return known;
    }
}
