using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Ledger.Json;

namespace DailyAdjust.Ledger.Records;

/// <summary>The sheets as they were issued: from the step `computed` on, for then their bytes are fixed.</summary>
public sealed class Sheets
{
    private readonly LedgerDb _db;

    internal Sheets(LedgerDb db) => _db = db;

    /// <summary>By date and issue, both ends included; null = no end. What they say is read, and kept, when somebody asks for it while the ledger is open: of a long history few sheets are.</summary>
    public IReadOnlyList<IssuedSheet> Issued(DateOnly? first = null, DateOnly? last = null) => _db.Query(
        "SELECT m.day, m.issue, m.as_of FROM advice AS a JOIN morning AS m USING (day, issue) WHERE m.day BETWEEN $first AND $last ORDER BY m.day, m.issue",
        r =>
        {
            var (day, issue) = (r.GetString(0), r.GetInt32(1));
            return new IssuedSheet(Formats.ToDay(day), issue, Formats.ToInstant(r.GetString(2)), new LateList<IssuedLine>(() => Lines(day, issue)));
        },
        ("$first", Formats.OfDay(first ?? DateOnly.MinValue)),
        ("$last", Formats.OfDay(last ?? DateOnly.MaxValue)));

    /// <summary>The report files as they were issued, by name in ordinal order; empty = nothing was issued.</summary>
    public IReadOnlyList<KeyValuePair<string, byte[]>> ReportFiles(DateOnly date, int issue) => _db.Query(
        "SELECT name, length, body FROM report_file WHERE day = $day AND issue = $issue ORDER BY name",
        r => KeyValuePair.Create(r.GetString(0), Packed.Unpack((byte[])r[2], r.GetInt32(1))),
        ("$day", Formats.OfDay(date)),
        ("$issue", issue));

    /// <summary>One of them, for whoever holds many sheets at once: it stays packed, and is unpacked each time that it is asked for.</summary>
    /// <exception cref="LedgerException">Corrupt: it is not there.</exception>
    public Func<byte[]> ReportFile(DateOnly date, int issue, string name)
    {
        var (length, packed) = _db.First(
            "SELECT length, body FROM report_file WHERE day = $day AND issue = $issue AND name = $name",
            r => (r.GetInt32(0), (byte[])r[1]),
            ("$day", Formats.OfDay(date)),
            ("$issue", issue),
            ("$name", name));
        return packed is null
            ? throw new LedgerException(LedgerTrouble.Corrupt, FormattableString.Invariant($"{name} of sheet {date:yyyy-MM-dd}/{issue} is not in the ledger any more."))
            : () => Packed.Unpack(packed, length);
    }

    private IReadOnlyList<IssuedLine> Lines(string day, int issue) => _db.First(
        "SELECT lines FROM advice WHERE day = $day AND issue = $issue", r => IssuedLineJson.Read(r.GetString(0)), ("$day", day), ("$issue", issue))
        ?? throw new LedgerException(LedgerTrouble.Corrupt, FormattableString.Invariant($"What sheet {day}/{issue} says is not in the ledger any more."));
}
