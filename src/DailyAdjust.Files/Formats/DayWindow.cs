using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Formats;

/// <summary>The site's calendar day that a daily value is booked on, and the window in words where it was observed over another one.</summary>
/// <param name="Date">The day that most of the window belongs to, or that the format names.</param>
/// <param name="Words">Null = the window is the site's calendar day, or the format does not say.</param>
internal readonly record struct DayWindow(DateOnly Date, string? Words = null)
{
    /// <summary>Dates outside of these are mistakes; within them every day has a day before and after.</summary>
    public const int EarliestYear = 1750;

    public const int LatestYear = 2250;

    private static readonly TimeOnly Noon = new(12, 0);
    private static readonly TimeOnly LastMinute = new(23, 59);
    private static readonly TimeOnly SixOClock = new(6, 0);

    /// <summary>The 24 hours to an observer's reading: one before noon reports mostly of the day before.</summary>
    /// <param name="date">The date of the reading.</param>
    /// <param name="at">Its time on the site's clock; 23:59 = the day's end.</param>
    public static DayWindow EndingAt(DateOnly date, TimeOnly at) =>
        at >= LastMinute ? new(date)
        : at < Noon ? new(date.AddDays(-1), $"24 h to {Text(at)} of the next day")
        : new(date, $"24 h to {Text(at)}");

    /// <summary>00 to 24 h UTC of the date.</summary>
    public static DayWindow Utc(DateOnly date, SiteClock clock) => Of(date, AtUtc(date, TimeOnly.MinValue), clock, "00 to 24 h UTC");

    /// <summary>06 h UTC of the date to 06 h UTC of the next.</summary>
    public static DayWindow FromSixUtc(DateOnly date, SiteClock clock) => Of(date, AtUtc(date, SixOClock), clock, "06 h UTC to 06 h UTC of the next day");

    /// <summary>Midnight to midnight of a clock that stays on the site's standard time.</summary>
    public static DayWindow Standard(DateOnly date, SiteClock clock) =>
        Of(date, clock.ToInstantStandard(date, TimeOnly.MinValue), clock, "the day in standard time");

    /// <summary>24 hours, on the date that the middle of them lies on: far east of Greenwich most of a UTC day is the next one.</summary>
    private static DayWindow Of(DateOnly date, DateTimeOffset begin, SiteClock clock, string words) => begin == clock.DayStart(date) && begin.AddDays(1) == clock.DayEnd(date)
        ? new(date)
        : new(clock.DateOf(begin.AddHours(12)), words);

    private static DateTimeOffset AtUtc(DateOnly date, TimeOnly time) => new(date.ToDateTime(time), TimeSpan.Zero);

    private static string Text(TimeOnly at) => at.ToString("HH:mm", CultureInfo.InvariantCulture);
}
