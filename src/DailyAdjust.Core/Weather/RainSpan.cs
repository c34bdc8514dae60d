using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>Rain that somebody read off a gauge.</summary>
/// <param name="From">Begin of the span, UTC: the gauge's last entry (a date's total only if it came in before this one), at most 24 hours back.</param>
/// <param name="To">Its end: the entry's time.</param>
/// <param name="Mm">What fell in it.</param>
/// <param name="WholeDate">The date whose total it is (an entry without a time of day); null otherwise.</param>
internal sealed record RainSpan(DateTimeOffset From, DateTimeOffset To, double Mm, DateOnly? WholeDate)
{
    private static readonly TimeSpan Longest = TimeSpan.FromHours(24);

    /// <summary>A gauge's entries as spans in order of time; none of them overlaps another, save for whole dates.</summary>
    /// <param name="log">In order of arrival; voided and superseded entries removed.</param>
    /// <param name="asOf">Entries of a later instant are not used.</param>
    /// <param name="totals">Totals of the date of that instant that count already, though it is not over.</param>
    public static IReadOnlyList<RainSpan> Of(string gauge, IEnumerable<LogEntry> log, SiteClock clock, DateTimeOffset asOf, IReadOnlyList<LogEntry>? totals = null)
    {
        var entries = OfGauge(log).Where(e => e.At <= asOf).Concat(OfGauge(totals ?? []))
            .OrderBy(e => e.At).ThenBy(e => e.Entry.Time.Clock is null ? 1 : 0).ThenBy(e => e.Entry.Ordinal);

        List<RainSpan> spans = [];
        List<(DateTimeOffset At, int Arrived, bool IsTotal)> before = [];
        foreach (var (entry, at, arrived) in entries)
        {
            if (entry.Time.Clock is null)
            {
                spans.Add(new(clock.DayStart(entry.Time.Date), at, entry.Value!.Value, entry.Time.Date));
            }
            else
            {
                // A total that comes in after a reading tells nothing of what that reading held.
                var last = before.Where(b => !b.IsTotal || b.Arrived < arrived).Max(b => (DateTimeOffset?)b.At);
                spans.Add(new(last > at - Longest ? last.Value : at - Longest, at, entry.Value!.Value, null));
            }

            before.Add((at, arrived, entry.Time.Clock is null));
        }

        return spans;

        IEnumerable<(LogEntry Entry, DateTimeOffset At, int Arrived)> OfGauge(IEnumerable<LogEntry> all) => all
            .Where(e => e.Kind == LogKind.Rain && e.Value is not null && e.Where.Kind == PlaceKind.Gauge && string.Equals(e.Where.Name, gauge, StringComparison.Ordinal))
            .Select((e, i) => (e, e.Time.Instant(clock), i));
    }

    /// <summary>How much of a time lies in the span.</summary>
    public TimeSpan Within(DateTimeOffset begin, DateTimeOffset end)
    {
        var from = From > begin ? From : begin;
        var to = To < end ? To : end;
        return to > from ? to - from : TimeSpan.Zero;
    }
}
