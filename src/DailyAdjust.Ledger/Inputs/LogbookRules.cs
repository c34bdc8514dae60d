using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>Which entries hold: a later row of the same identity takes an earlier one's place, a void removes.</summary>
internal static class LogbookRules
{
    /// <param name="rows">All rows in order of arrival.</param>
    /// <returns>In order of arrival of each identity's first row, without voids and what they removed.</returns>
    public static IReadOnlyList<LogEntry> Effective(IReadOnlyList<(long Seq, LogEntry Entry)> rows)
    {
        var order = new List<(LogTime, LogKind, string, int)>();
        var newest = new Dictionary<(LogTime, LogKind, string, int), (long Seq, LogEntry Entry)>();
        foreach (var row in rows)
        {
            if (!newest.ContainsKey(row.Entry.Identity))
            {
                order.Add(row.Entry.Identity);
            }

            newest[row.Entry.Identity] = row;
        }

        // From the latest back: a void that a later void removed has removed nothing.
        var voids = new List<(long Seq, LogEntry Entry)>();
        foreach (var row in newest.Values.Where(r => r.Entry.Kind == LogKind.Void).OrderByDescending(r => r.Seq))
        {
            if (!IsVoided(row, voids))
            {
                voids.Add(row);
            }
        }

        return [.. order.Select(id => newest[id]).Where(r => r.Entry.Kind != LogKind.Void && !IsVoided(r, voids)).Select(r => r.Entry)];
    }

    // A row that arrived after the void (a correction of what it removed) holds again.
    private static bool IsVoided((long Seq, LogEntry Entry) row, List<(long Seq, LogEntry Entry)> voids) =>
        voids.Exists(v => v.Seq > row.Seq && Names(v.Entry, row.Entry));

    /// <summary>A void carries the time of what it removes, the kind as its text and, unless it is "site", the place.</summary>
    private static bool Names(LogEntry removal, LogEntry entry) =>
        removal.Time == entry.Time
        && string.Equals(removal.Text, entry.Kind.ToString(), StringComparison.OrdinalIgnoreCase)
        && (removal.Where.Kind == PlaceKind.Site || removal.Where == entry.Where);
}
