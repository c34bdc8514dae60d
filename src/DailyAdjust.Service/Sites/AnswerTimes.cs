using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// When the answers of a round sheet that came back count, and which entry of the logbook each is: what was set counts from the minute in which the file came in, since then somebody
/// has been there (or from when somebody says that it was done), at the latest from the end of the round. A corrected file takes the place of the earlier answers, at their time.
/// </summary>
internal static class AnswerTimes
{
    /// <param name="site">Opened, without the answers.</param>
    /// <param name="answers">Settings of sheets that were issued, as the file was read.</param>
    /// <param name="said">When they are said, UTC.</param>
    public static IReadOnlyList<LogEntry> Of(OpenSite site, IReadOnlyList<LogEntry> answers, DateTimeOffset said)
    {
        var logbook = site.Ledger.Logbook.Effective();
        var timed = new List<LogEntry>();
        foreach (var answer in answers)
        {
            var issued = site.Ledger.Sheets.Issued(answer.Sheet, answer.Sheet).Last(s => answer.Issue is null || s.Issue == answer.Issue);
            timed.Add(logbook.LastOrDefault(e => IsSame(e, answer)) is { } before
                ? At(answer, before.Time) with { Ordinal = before.Ordinal, Issue = before.Issue }
                : WithOrdinal(At(answer, Time(SiteVersions.On(site.Versions, issued.Date), issued, answer, said)) with { Issue = issued.Issue }, logbook, timed));
        }

        return timed;
    }

    /// <summary>The same line of the same sheet; a sheet without its issue is the one that was answered last.</summary>
    private static bool IsSame(LogEntry entry, LogEntry answer) =>
        entry.Kind == answer.Kind && entry.Sheet == answer.Sheet && entry.Where == answer.Where && (answer.Issue is null || entry.Issue == answer.Issue)
        && IsFound(entry) == IsFound(answer);

    private static bool IsFound(LogEntry entry) => string.Equals(entry.Text, LogEntry.Found, StringComparison.Ordinal);

    private static LogTime Time(Site site, IssuedSheet sheet, LogEntry answer, DateTimeOffset said)
    {
        var came = MorningTime.WholeMinute(said);
        var roundEnds = site.Report.StartsChangeFrom(site.Clock, sheet.Date, sheet.AsOf);
        var set = came > roundEnds ? roundEnds : came < sheet.AsOf ? sheet.AsOf : came;
        if (!IsFound(answer))
        {
            return Local(site.Clock, set);
        }

        // What the dial showed before: from the hour of its sheet.
        var found = site.Report.IsAfterRound(site.Clock, sheet.Date, sheet.AsOf) ? sheet.AsOf : answer.Time.Instant(site.Clock);
        return Local(site.Clock, found < set ? found : set);
    }

    private static LogTime Local(SiteClock clock, DateTimeOffset instant)
    {
        var local = clock.ToLocal(instant).DateTime;
        return new(DateOnly.FromDateTime(local), TimeOnly.FromDateTime(local));
    }

    /// <summary>A pause ends at the time of day at which it begins.</summary>
    private static LogEntry At(LogEntry answer, LogTime time) => answer with { Time = time, Until = answer.Until is { } until ? new LogTime(until.Date, time.Clock) : null };

    /// <summary>Not in the place of anything else that somebody said in that minute.</summary>
    private static LogEntry WithOrdinal(LogEntry answer, IEnumerable<LogEntry> logbook, IEnumerable<LogEntry> timed) => answer with
    {
        Ordinal = logbook.Concat(timed).Where(e => e.Time == answer.Time && e.Kind == answer.Kind && e.Where == answer.Where).Select(e => e.Ordinal + 1).Append(0).Max(),
    };
}
