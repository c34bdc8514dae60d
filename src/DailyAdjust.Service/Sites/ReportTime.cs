using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>One time at which a sheet of the site lies ready.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Instant">The report hour, UTC.</param>
public readonly record struct ReportTime(DateOnly Date, DateTimeOffset Instant)
{
    /// <summary>The report hour of a date: the first of its report times.</summary>
    public static ReportTime Of(Site site, DateOnly date) => new(date, site.Clock.ToInstant(date, site.Report.At[0]));

    /// <summary>The newest report time whose work has begun by now.</summary>
    /// <param name="site">Knows the hours and the clock.</param>
    /// <param name="now">UTC.</param>
    /// <param name="before">How long before the hour the work begins.</param>
    public static ReportTime Newest(Site site, DateTimeOffset now, TimeSpan before)
    {
        // Work that begins before midnight for a report hour just after it belongs to the next date already.
        var date = site.Clock.DateOf(now + before);
        return Of(site, [date, date.AddDays(-1)]).Last(time => time.Instant - before <= now);
    }

    /// <summary>The first report time whose work has not begun by now.</summary>
    public static ReportTime Next(Site site, DateTimeOffset now, TimeSpan before)
    {
        var date = site.Clock.DateOf(now + before);
        return Of(site, [date, date.AddDays(1)]).First(time => time.Instant - before > now);
    }

    private static IEnumerable<ReportTime> Of(Site site, IReadOnlyList<DateOnly> dates) => dates
        .SelectMany(date => site.Report.At.Select(at => new ReportTime(date, site.Clock.ToInstant(date, at))))
        .OrderBy(time => time.Instant);
}
