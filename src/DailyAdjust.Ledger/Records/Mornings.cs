using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Ledger.Json;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger.Records;

/// <summary>How far a morning has come.</summary>
public enum MorningStep
{
    /// <summary>Begun: what it may know is fixed, nothing is computed.</summary>
    Due,

    /// <summary>Its advice and its report files are fixed and kept here; they may not lie in their folder yet.</summary>
    Computed,

    /// <summary>The report files lie in their folder.</summary>
    Written,

    /// <summary>Slept over, or given up: nothing was issued.</summary>
    Missed,
}

/// <summary>One morning's record; (date, issue) is the name of its sheet.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Issue">1, 2, ...; 0 = slept over.</param>
/// <param name="AsOf">The instant whose knowledge counts, UTC.</param>
/// <param name="Watermark">The highest input number that it could use.</param>
/// <param name="Calculation">Version of the calculation.</param>
/// <param name="TimeZones">Version of the time-zone data.</param>
/// <param name="Step">How far it has come.</param>
/// <param name="Sha">SHA-256 over the advice and the report files; null until computed.</param>
public sealed record MorningRecord(
    DateOnly Date, int Issue, DateTimeOffset AsOf, long Watermark, string Calculation, string TimeZones, MorningStep Step, string? Sha);

/// <summary>
/// Which mornings were begun, computed, written or missed. Each step is a transaction of its own, so that after a crash
/// the next start sees how far a morning had come; a written or missed one is never changed.
/// </summary>
public sealed class Mornings
{
    private const string Columns = "day, issue, as_of, watermark, calculation, time_zones, step, sha";

    private readonly LedgerDb _db;

    internal Mornings(LedgerDb db) => _db = db;

    /// <summary>Begins the next issue of a date's sheet; what has arrived by now is what it may use.</summary>
    /// <exception cref="InvalidOperationException">An issue of this date is unfinished: finish that one (<see cref="Unfinished"/>).</exception>
    public MorningRecord Begin(DateOnly date, DateTimeOffset asOf, string calculation, string timeZones) => _db.InOneStep(() =>
    {
        var known = Of(date);
        if (known.Any(m => m.Step is MorningStep.Due or MorningStep.Computed))
        {
            throw new InvalidOperationException(FormattableString.Invariant($"An issue of the sheet of {date:yyyy-MM-dd} is unfinished."));
        }

        var issue = known.Count == 0 ? 1 : known[^1].Issue + 1;
        return Insert(new MorningRecord(date, issue, asOf.ToUniversalTime(), Watermark(), calculation, timeZones, MorningStep.Due, null));
    });

    /// <summary>Fixes what the sheet says, and keeps its report files' bytes.</summary>
    /// <param name="lines">One per program.</param>
    /// <param name="files">The report files by name, without a folder.</param>
    public MorningRecord RecordComputed(DateOnly date, int issue, IReadOnlyList<IssuedLine> lines, IReadOnlyDictionary<string, byte[]> files) => _db.InOneStep(() =>
    {
        var json = IssuedLineJson.Write(lines);
        var inOrder = files.OrderBy(f => f.Key, StringComparer.Ordinal).ToList();
        Advance(date, issue, MorningStep.Due, MorningStep.Computed, SheetHash.Of(json, inOrder));
        _db.Execute("INSERT INTO advice (day, issue, lines) VALUES ($day, $issue, $lines)", [.. Key(date, issue), ("$lines", json)]);
        foreach (var (name, bytes) in inOrder)
        {
            _db.Execute(
                "INSERT INTO report_file (day, issue, name, length, body) VALUES ($day, $issue, $name, $length, $body)",
                [.. Key(date, issue), ("$name", name), ("$length", bytes.Length), ("$body", Packed.Pack(bytes))]);
        }

        return Get(date, issue)!;
    });

    /// <summary>The report files lie in their folder, flushed.</summary>
    public void RecordWritten(DateOnly date, int issue) => _db.InOneStep(() => Advance(date, issue, MorningStep.Computed, MorningStep.Written, null));

    /// <summary>
    /// Nothing was issued on this date: slept over, or begun and given up. Changes nothing when the date has a morning that
    /// was computed, written or missed.
    /// </summary>
    public void RecordMissed(DateOnly date, DateTimeOffset asOf, string calculation, string timeZones) => _db.InOneStep(() =>
    {
        var known = Of(date);
        if (known.Count == 0)
        {
            Insert(new MorningRecord(date, 0, asOf.ToUniversalTime(), Watermark(), calculation, timeZones, MorningStep.Missed, null));
        }
        else if (known[^1].Step == MorningStep.Due)
        {
            Advance(date, known[^1].Issue, MorningStep.Due, MorningStep.Missed, null);
        }

        return 0;
    });

    /// <summary>Null = there is none.</summary>
    public MorningRecord? Get(DateOnly date, int issue) =>
        _db.First($"SELECT {Columns} FROM morning WHERE day = $day AND issue = $issue", ToRecord, Key(date, issue));

    /// <summary>A date's mornings in order of issue.</summary>
    public IReadOnlyList<MorningRecord> Of(DateOnly date) =>
        _db.Query($"SELECT {Columns} FROM morning WHERE day = $day ORDER BY issue", ToRecord, ("$day", Formats.OfDay(date)));

    /// <summary>The latest date's latest morning, missed ones included; null = there was none yet.</summary>
    public MorningRecord? Last() => _db.First($"SELECT {Columns} FROM morning ORDER BY day DESC, issue DESC LIMIT 1", ToRecord);

    /// <summary>By date and issue, both ends included.</summary>
    public IReadOnlyList<MorningRecord> Between(DateOnly first, DateOnly last) => _db.Query(
        $"SELECT {Columns} FROM morning WHERE day BETWEEN $first AND $last ORDER BY day, issue",
        ToRecord,
        ("$first", Formats.OfDay(first)),
        ("$last", Formats.OfDay(last)));

    /// <summary>Begun or computed and not yet written: what a start after a crash has to finish, as of its instant and watermark.</summary>
    public IReadOnlyList<MorningRecord> Unfinished() =>
        _db.Query($"SELECT {Columns} FROM morning WHERE step IN ('due', 'computed') ORDER BY day, issue", ToRecord);

    private static (string, object?)[] Key(DateOnly date, int issue) => [("$day", Formats.OfDay(date)), ("$issue", issue)];

    private static MorningRecord ToRecord(SqliteDataReader r) => new(
        Formats.ToDay(r.GetString(0)),
        r.GetInt32(1),
        Formats.ToInstant(r.GetString(2)),
        r.GetInt64(3),
        r.GetString(4),
        r.GetString(5),
        Words.To<MorningStep>(r.GetString(6)),
        r.IsDBNull(7) ? null : r.GetString(7));

    private long Watermark() => _db.Number("SELECT coalesce(max(seq), 0) FROM input");

    private MorningRecord Insert(MorningRecord morning)
    {
        _db.Execute(
            $"INSERT INTO morning ({Columns}) VALUES ($day, $issue, $as_of, $watermark, $calculation, $zones, $step, $sha)",
            [
                .. Key(morning.Date, morning.Issue),
                ("$as_of", Formats.OfInstant(morning.AsOf)),
                ("$watermark", morning.Watermark),
                ("$calculation", morning.Calculation),
                ("$zones", morning.TimeZones),
                ("$step", Words.Of(morning.Step)),
                ("$sha", morning.Sha),
            ]);
        return morning;
    }

    private int Advance(DateOnly date, int issue, MorningStep from, MorningStep to, string? sha)
    {
        var changed = _db.Execute(
            "UPDATE morning SET step = $to, sha = coalesce($sha, sha) WHERE day = $day AND issue = $issue AND step = $from",
            [.. Key(date, issue), ("$from", Words.Of(from)), ("$to", Words.Of(to)), ("$sha", sha)]);
        return changed == 1
            ? changed
            : throw new InvalidOperationException(
                FormattableString.Invariant($"Issue {issue} of the sheet of {date:yyyy-MM-dd} is not {Words.Of(from)}, so it cannot become {Words.Of(to)}."));
    }
}
