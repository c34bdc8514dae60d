using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>How far back a logbook entry reaches.</summary>
public static class TouchedDays
{
    /// <summary>The first date that an entry has a say in.</summary>
    public static DateOnly FirstOf(LogEntry entry, SiteClock clock)
    {
        var date = entry.Time.Date;
        return entry.Kind switch
        {
            // The starts whose stations were due to run in its span: the longest night begins two dates before.
            LogKind.Ran when entry.Until is not null => date.AddDays(-2),

            // The starts, or the rain, of the 24 hours up to its time; with a bare date that date's.
            LogKind.Ran or LogKind.Rain => entry.Time.Clock is null ? date : clock.DateOf(entry.Time.Instant(clock).AddHours(-24)),
            LogKind.Round => entry.Sheet is { } sheet && sheet < date ? sheet : date,
            _ => date,
        };
    }

    /// <summary>Entries that hold before or after a change of the logbook, but not both times.</summary>
    public static IReadOnlyList<LogEntry> Differences(IReadOnlyList<LogEntry> before, IReadOnlyList<LogEntry> after)
    {
        // By identity and by everything that an entry says: two records with equal lists are not equal by themselves.
        var known = before.Select(Said).ToHashSet();
        var now = after.Select(Said).ToHashSet();
        return [.. before.Where(e => !now.Contains(Said(e))), .. after.Where(e => !known.Contains(Said(e)))];
    }

    private static object Said(LogEntry e) =>
        (e.Identity, e.Value, e.Unit, e.Text, e.Sheet, e.Issue, string.Join(' ', e.Except), (e.Until, e.Times), (e.By + '\n' + e.Note, e.Instrument, e.RodLengthM));
}
