using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>Which morning is meant, and whose knowledge it is.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="AsOf">The instant whose knowledge counts, UTC.</param>
public readonly record struct MorningTime(DateOnly Date, DateTimeOffset AsOf)
{
    /// <summary>
    /// A given date is as of its report hour. Today is as of now; in the minutes before the report hour, in which the sheet for it is
    /// made, as of that hour.
    /// </summary>
    public static MorningTime Of(Site site, DateOnly? given, DateTimeOffset now, TimeSpan workBeginsBefore)
    {
        if (given is { } date)
        {
            return new(date, ReportTime.Of(site, date).Instant);
        }

        var newest = ReportTime.Newest(site, now, workBeginsBefore);
        var asOf = newest.Instant > now ? newest.Instant : WholeMinute(now);
        return new(site.Clock.DateOf(asOf), asOf);
    }

    /// <summary>The minute that has begun.</summary>
    public static DateTimeOffset WholeMinute(DateTimeOffset instant) => new(instant.UtcTicks - (instant.UtcTicks % TimeSpan.TicksPerMinute), TimeSpan.Zero);
}
