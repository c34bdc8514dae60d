using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>A site-local calendar day as a span of time: 23, 24 or 25 hours where the clock moves.</summary>
internal readonly record struct DaySpan(DateOnly Date, DateTimeOffset Begin, DateTimeOffset End)
{
    public TimeSpan Length => End - Begin;

    public static DaySpan Of(SiteClock clock, DateOnly date) => new(date, clock.DayStart(date), clock.DayEnd(date));

    /// <summary>An interval belongs to the day in which it begins.</summary>
    public bool Holds(DateTimeOffset begin) => begin >= Begin && begin < End;
}
