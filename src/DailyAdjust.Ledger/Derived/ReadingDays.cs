using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger.Derived;

/// <summary>One file's readings of one source on one day.</summary>
/// <param name="Source">Weather station.</param>
/// <param name="Day">The site's calendar day in which the readings begin.</param>
/// <param name="Seq">Input number of the file: where two blocks have the same reading, the later one holds.</param>
/// <param name="MapSha">Hash of the column map that it was read with.</param>
/// <param name="Body">The readings, packed by their own writer.</param>
public sealed record ReadingDay(string Source, DateOnly Day, long Seq, string MapSha, byte[] Body);

/// <summary>Readings by source, day and file: what comes of the stored files and may be read from them again.</summary>
public sealed class ReadingDays
{
    private readonly LedgerDb _db;

    internal ReadingDays(LedgerDb db) => _db = db;

    /// <summary>Keeps blocks; a block of the same source, day and file takes the earlier one's place.</summary>
    public void Put(IEnumerable<ReadingDay> blocks) => _db.InOneStep(() =>
    {
        foreach (var b in blocks)
        {
            _db.ExecuteMany(
                """
                INSERT INTO reading_day (source, day, seq, map_sha, body) VALUES ($source, $day, $seq, $map, $body)
                ON CONFLICT (source, day, seq) DO UPDATE SET map_sha = excluded.map_sha, body = excluded.body
                """,
                ("$source", b.Source),
                ("$day", Formats.OfDay(b.Day)),
                ("$seq", b.Seq),
                ("$map", b.MapSha),
                ("$body", b.Body));
        }

        return 0;
    });

    /// <summary>By day, then in order of arrival; both ends included.</summary>
    /// <param name="upTo">The highest input number to look at: what was known then.</param>
    public IReadOnlyList<ReadingDay> Between(string source, DateOnly first, DateOnly last, long upTo = long.MaxValue) => _db.Query(
        """
        SELECT source, day, seq, map_sha, body FROM reading_day
        WHERE source = $source AND day BETWEEN $first AND $last AND seq <= $seq ORDER BY day, seq
        """,
        ToBlock,
        ("$source", source),
        ("$first", Formats.OfDay(first)),
        ("$last", Formats.OfDay(last)),
        ("$seq", upTo));

    /// <summary>The first of some days, both ends included, on which inputs after one and up to another say something new; null = none.</summary>
    public DateOnly? FirstChanged(string source, DateOnly first, DateOnly last, long after, long upTo) => _db.First(
        "SELECT min(day) FROM reading_day WHERE source = $source AND day BETWEEN $first AND $last AND seq > $after AND seq <= $seq",
        r => r.IsDBNull(0) ? (DateOnly?)null : Formats.ToDay(r.GetString(0)),
        ("$source", source),
        ("$first", Formats.OfDay(first)),
        ("$last", Formats.OfDay(last)),
        ("$after", after),
        ("$seq", upTo));

    /// <summary>The last day of a source with a reading; null = it has none.</summary>
    public DateOnly? LastDay(string source, long upTo = long.MaxValue) => Edge("max", source, upTo);

    /// <summary>The first day of a source with a reading; null = it has none.</summary>
    public DateOnly? FirstDay(string source, long upTo = long.MaxValue) => Edge("min", source, upTo);

    /// <summary>Forgets what was read from one file.</summary>
    public void Forget(long seq) => _db.InOneStep(() =>
        _db.Execute("DELETE FROM reading_day WHERE seq = $seq", ("$seq", seq)) + _db.Execute("DELETE FROM file_read WHERE seq = $seq", ("$seq", seq)));

    /// <summary>Forgets what was read from every file that gave readings; those files count as never read.</summary>
    internal void ForgetAll() => _db.InOneStep(() =>
        _db.Execute("DELETE FROM file_read WHERE seq IN (SELECT seq FROM reading_day)") + _db.Execute("DELETE FROM reading_day"));

    private static ReadingDay ToBlock(SqliteDataReader r) =>
        new(r.GetString(0), Formats.ToDay(r.GetString(1)), r.GetInt64(2), r.GetString(3), (byte[])r[4]);

    private DateOnly? Edge(string end, string source, long upTo) => _db.First(
        $"SELECT {end}(day) FROM reading_day WHERE source = $source AND seq <= $seq",
        r => r.IsDBNull(0) ? (DateOnly?)null : Formats.ToDay(r.GetString(0)),
        ("$source", source),
        ("$seq", upTo));
}
