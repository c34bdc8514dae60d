using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger.Json;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>What became of entries given to the logbook.</summary>
/// <param name="Added">Those that were new or took an earlier one's place, as given.</param>
/// <param name="Superseded">How many of them took an earlier one's place.</param>
/// <param name="Known">How many were there already, word for word.</param>
public sealed record LogAdded(IReadOnlyList<LogEntry> Added, int Superseded, int Known);

/// <summary>What people did and saw; only ever added to. An entry's identity is its time, kind, place and ordinal.</summary>
public sealed class LogbookEntries
{
    private readonly LedgerDb _db;
    private readonly InputOrder _order;

    internal LogbookEntries(LedgerDb db, InputOrder order)
    {
        _db = db;
        _order = order;
    }

    /// <summary>Adds what is not there yet; an entry of a known identity with other words takes the earlier one's place.</summary>
    /// <param name="entries">In the order of their file.</param>
    /// <param name="at">When they arrived.</param>
    /// <param name="fromFile">Input number of the file that they stand in; null = entered by hand.</param>
    /// <param name="fromSheet">The returned sheet that they stand on ("2026-06-08/1"); null = none.</param>
    public LogAdded Add(IReadOnlyList<LogEntry> entries, DateTimeOffset at, long? fromFile = null, string? fromSheet = null) => _db.InOneStep(() =>
    {
        var added = new List<LogEntry>();
        var superseded = 0;
        foreach (var entry in entries)
        {
            var body = LogEntryJson.Write(entry);
            var before = NewestBody(entry);
            if (string.Equals(before, body, StringComparison.Ordinal))
            {
                continue;
            }

            _db.Execute(
                """
                INSERT INTO logbook (seq, time, kind, place, ordinal, body, from_file, from_sheet)
                VALUES ($seq, $time, $kind, $place, $ordinal, $body, $file, $sheet)
                """,
                [("$seq", _order.Next(InputOrder.Log, at)), .. Identity(entry), ("$body", body), ("$file", fromFile), ("$sheet", fromSheet)]);
            added.Add(entry);
            superseded += before is null ? 0 : 1;
        }

        return new LogAdded(added, superseded, entries.Count - added.Count);
    });

    /// <summary>
    /// The entries that hold, in order of arrival of each identity's first row; superseded and voided ones removed, and
    /// the voids themselves.
    /// </summary>
    /// <param name="upTo">The highest input number to look at: what was known then.</param>
    public IReadOnlyList<LogEntry> Effective(long upTo = long.MaxValue) => LogbookRules.Effective(_db.Query(
        "SELECT seq, body FROM logbook WHERE seq <= $seq ORDER BY seq",
        r => (r.GetInt64(0), LogEntryJson.Read(r.GetString(1))),
        ("$seq", upTo)));

    private static (string, object?)[] Identity(LogEntry entry) =>
    [
        ("$time", Formats.OfLogTime(entry.Time)),
        ("$kind", LogEntryJson.Word(entry.Kind)),
        ("$place", entry.Where.ToString()),
        ("$ordinal", entry.Ordinal),
    ];

    private string? NewestBody(LogEntry entry) => _db.First(
        """
        SELECT body FROM logbook
        WHERE time = $time AND kind = $kind AND place = $place AND ordinal = $ordinal ORDER BY seq DESC LIMIT 1
        """,
        r => r.GetString(0),
        Identity(entry));
}
