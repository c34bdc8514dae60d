using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Records;

namespace DailyAdjust.Service.Sites;

/// <summary>What is due and not done at one site.</summary>
/// <param name="Missed">Mornings that were slept over: closed and recorded, never issued.</param>
/// <param name="Issue">The one to issue; null = it is done.</param>
public sealed record MorningPlan(IReadOnlyList<DateOnly> Missed, ReportTime? Issue)
{
    /// <summary>The most mornings that are recorded as missed at once (ten years).</summary>
    private const int MostMissed = 3660;

    /// <summary>Asks a ledger what is due and not done.</summary>
    /// <param name="site">Opened, with a description.</param>
    /// <param name="now">UTC.</param>
    /// <param name="before">How long before the hour the work begins; zero = what should be there by now.</param>
    public static MorningPlan Of(OpenSite site, DateTimeOffset now, TimeSpan before)
    {
        var due = ReportTime.Newest(site.Newest, now, before).Date;
        var sheet = site.Ledger.Sheets.Issued(due, due).MaxBy(s => s.Issue);
        return Of(site.Newest, site.Ledger.Mornings.Last()?.Date, sheet, now, before, site.Ledger.Mornings.Of(due) is [{ Step: MorningStep.Missed }]);
    }

    /// <summary>The same by its answers. A function of its arguments: it may be asked at any time and as often as wanted.</summary>
    /// <param name="site">Knows the report hours and the clock.</param>
    /// <param name="newestRecorded">The newest date that is issued or recorded as missed; null = none yet.</param>
    /// <param name="sheet">The newest issue of the date that is due; null = none yet.</param>
    /// <param name="now">UTC.</param>
    /// <param name="before">How long before the hour the work begins.</param>
    /// <param name="isMissed">Whether the date that is due is recorded as slept over.</param>
    public static MorningPlan Of(Site site, DateOnly? newestRecorded, IssuedSheet? sheet, DateTimeOffset now, TimeSpan before, bool isMissed = false)
    {
        var due = ReportTime.Newest(site, now, before);
        if (due.Date < site.Start)
        {
            return new([], null);
        }

        var today = site.Clock.DateOf(now + before);
        var missed = MissedBefore(newestRecorded, due.Date);

        // A clock that was set back by hours asks for no sheet of the day before. One that had run days ahead has recorded sheets and missed mornings of
        // days that had not come: they do not stand for the mornings that are due now.
        if ((sheet?.Date == due.Date && sheet.AsOf >= due.Instant) || (newestRecorded == due.Date.AddDays(1) && !isMissed))
        {
            return new(missed, null);
        }

        // Yesterday's report hour with nothing issued is a morning slept over too; at a site that never had a sheet it is none.
        // Work for a report hour just after midnight begins on the date before; one just before midnight is still of its own date.
        return due.Date == today || due.Date == site.Clock.DateOf(now) ? new(missed, due)
            : newestRecorded is null || newestRecorded >= due.Date ? new(missed, null)
            : new([.. missed, due.Date], null);
    }

    /// <summary>Dates between the newest recorded morning and another; none where nothing was ever recorded.</summary>
    public static IReadOnlyList<DateOnly> MissedBefore(DateOnly? newestRecorded, DateOnly date) => newestRecorded is { } newest
        ? [.. Enumerable.Range(1, Math.Clamp(date.DayNumber - newest.DayNumber - 1, 0, MostMissed)).Select(newest.AddDays)]
        : [];
}
