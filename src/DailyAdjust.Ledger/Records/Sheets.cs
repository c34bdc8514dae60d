using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Ledger.Json;

namespace DailyAdjust.Ledger.Records;

/// <summary>The sheets as they were issued: from the step `computed` on, for then their bytes are fixed.</summary>
public sealed class Sheets
{
    private readonly LedgerDb _db;

    internal Sheets(LedgerDb db) => _db = db;

    /// <summary>By date and issue, both ends included; null = no end.</summary>
    public IReadOnlyList<IssuedSheet> Issued(DateOnly? first = null, DateOnly? last = null) => _db.Query(
        """
        SELECT m.day, m.issue, m.as_of, a.lines FROM advice AS a JOIN morning AS m USING (day, issue)
        WHERE m.day BETWEEN $first AND $last ORDER BY m.day, m.issue
        """,
        r => new IssuedSheet(
            Formats.ToDay(r.GetString(0)), r.GetInt32(1), Formats.ToInstant(r.GetString(2)), IssuedLineJson.Read(r.GetString(3))),
        ("$first", Formats.OfDay(first ?? DateOnly.MinValue)),
        ("$last", Formats.OfDay(last ?? DateOnly.MaxValue)));

    /// <summary>The report files as they were issued, by name in ordinal order; empty = nothing was issued.</summary>
    public IReadOnlyList<KeyValuePair<string, byte[]>> ReportFiles(DateOnly date, int issue) => _db.Query(
        "SELECT name, length, body FROM report_file WHERE day = $day AND issue = $issue ORDER BY name",
        r => KeyValuePair.Create(r.GetString(0), Packed.Unpack((byte[])r[2], r.GetInt32(1))),
        ("$day", Formats.OfDay(date)),
        ("$issue", issue));
}
