using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Guess;

/// <summary>One way to read the times, held against the sun.</summary>
/// <param name="OffMinutes">How far the middle of the day's radiation lies from solar noon if they are read so; mean of the clear days without their sign, min.</param>
internal sealed record SunFit(StampClock Clock, StampMeaning Stamp, double OffMinutes);

/// <summary>
/// Which clock wrote a file's times, and whether they end or begin their intervals: on a clear day the middle of the radiation is solar noon.
/// </summary>
/// <param name="Fits">All six ways, the best first.</param>
/// <param name="Days">Clear days that were measured.</param>
/// <param name="ErrorMinutes">How far the middles of single days lie apart, divided by the root of their number, min.</param>
internal sealed record SunClock(IReadOnlyList<SunFit> Fits, int Days, double ErrorMinutes)
{
    private const int MostDays = 20;

    /// <summary>Of the clearest day's share of extraterrestrial radiation: the others count as clear too.</summary>
    private const double Clear = 0.9;

    /// <summary>Haze and hills move the middle even of a clear day by some minutes. Common practice.</summary>
    private const double HazeMinutes = 6;

    /// <summary>A way that is no worse than the best one by more than can be measured.</summary>
    public IReadOnlyList<SunFit> Possible => [.. Fits.Where(fit => fit.OffMinutes <= Fits[0].OffMinutes + HazeMinutes + (2 * ErrorMinutes))];

    /// <summary>Null = too few whole days with radiation, or the place lies where the sun does not rise every day.</summary>
    /// <param name="rows">Time as written and radiation in any unit, ascending.</param>
    public static SunClock? Of(IReadOnlyList<(DateTime Stamp, double Radiation)> rows, TimeSpan interval, GuessPlace place)
    {
        var noon = Noon(rows);
        var perDay = TimeSpan.FromDays(1) / interval;
        var days = rows
            .GroupBy(row => DateOnly.FromDateTime(row.Stamp - noon + TimeSpan.FromHours(12)))
            .Where(day => day.Count() >= 0.95 * perDay && day.Count() <= 1.05 * perDay)
            .Select(day => Day(day.Key, [.. day], noon, place))
            .Where(day => day.Clearness > 0)
            .ToList();
        if (days.Count == 0)
        {
            return null;
        }

        var clearest = days.Max(day => day.Clearness);
        var clear = days.Where(day => day.Clearness >= Clear * clearest).OrderByDescending(day => day.Clearness).ThenBy(day => day.Date).Take(MostDays).ToList();
        var fits = new[] { StampClock.Local, StampClock.Standard, StampClock.Utc }
            .SelectMany(clock => new[] { StampMeaning.End, StampMeaning.Start }.Select(stamp => (clock, stamp)))
            .Select(way => new SunFit(way.clock, way.stamp, clear.Average(day => Math.Abs(Off(day.Date, day.Middle, way.clock, way.stamp, interval, place)))))
            .OrderBy(fit => fit.OffMinutes).ThenBy(fit => fit.Clock).ThenBy(fit => fit.Stamp)
            .ToList();
        var offs = clear.ConvertAll(day => Off(day.Date, day.Middle, fits[0].Clock, fits[0].Stamp, interval, place));
        var mean = offs.Average();
        var error = clear.Count < 3 ? 20 / Math.Sqrt(clear.Count) : Math.Sqrt(offs.Sum(off => (off - mean) * (off - mean)) / (clear.Count - 1) / clear.Count);
        return new(fits, clear.Count, error);
    }

    /// <summary>The time of day around which radiation gathers, by the clock that wrote it; a clock in UTC may have it near midnight.</summary>
    private static TimeSpan Noon(IReadOnlyList<(DateTime Stamp, double Radiation)> rows)
    {
        var (x, y) = (0.0, 0.0);
        foreach (var (stamp, radiation) in rows)
        {
            var angle = stamp.TimeOfDay / TimeSpan.FromDays(1) * 2 * Math.PI;
            x += radiation * Math.Cos(angle);
            y += radiation * Math.Sin(angle);
        }

        return TimeSpan.FromDays(((Math.Atan2(y, x) / (2 * Math.PI)) + 1) % 1);
    }

    /// <summary>A day from 12 hours before its noon to 12 hours after; its middle as written.</summary>
    private static (DateOnly Date, DateTime Middle, double Clearness) Day(DateOnly date, List<(DateTime Stamp, double Radiation)> rows, TimeSpan noon, GuessPlace place)
    {
        var centre = date.ToDateTime(TimeOnly.MinValue) + noon;
        var sum = rows.Sum(row => Math.Max(0, row.Radiation));
        var moment = rows.Sum(row => Math.Max(0, row.Radiation) * (row.Stamp - centre).TotalMinutes);
        var sun = Sun.ExtraterrestrialRadiationMJPerM2Day(place.LatitudeDeg, date.DayOfYear);
        var daylight = Sun.DaylightHours(place.LatitudeDeg, date.DayOfYear);
        return sum > 0 && daylight is > 4 and < 20 ? (date, centre.AddMinutes(moment / sum), sum / sun) : (date, centre, 0);
    }

    /// <summary>Minutes after solar noon, -720 to 720.</summary>
    private static double Off(DateOnly date, DateTime middle, StampClock clock, StampMeaning stamp, TimeSpan interval, GuessPlace place)
    {
        var shown = middle + (stamp == StampMeaning.End ? -interval / 2 : interval / 2);
        var instant = clock switch
        {
            StampClock.Utc => new DateTimeOffset(DateTime.SpecifyKind(shown, DateTimeKind.Utc)),
            StampClock.Standard => place.Clock.ToInstantStandard(DateOnly.FromDateTime(shown), TimeOnly.FromDateTime(shown)),
            _ => place.Clock.AllInstants(shown)[0],
        };
        return Sun.SolarTimeAngleRad(instant, place.LongitudeDeg, date.DayOfYear) * 720 / Math.PI;
    }
}
