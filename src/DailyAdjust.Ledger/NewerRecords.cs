using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>What a ledger holds beyond a copy of it: what arrived and was issued after the copy was made.</summary>
/// <param name="History">Whether the one really is what became of the other.</param>
/// <param name="Files">Names of the files, in order of arrival.</param>
/// <param name="Entries">Logbook entries.</param>
/// <param name="Descriptions">Versions of the site description.</param>
/// <param name="Sheets">Sheets that were issued, by date and issue.</param>
public sealed record NewerRecords(
    LedgerHistory History, IReadOnlyList<string> Files, long Entries, long Descriptions, IReadOnlyList<(DateOnly Date, int Issue)> Sheets)
{
    public bool IsEmpty => Files.Count == 0 && Entries == 0 && Descriptions == 0 && Sheets.Count == 0;

    /// <summary>Kept tables whose rows have the number of their input.</summary>
    private static readonly string[] _inputs = ["input", "file", "file_chunk", "logbook", "site_version"];

    /// <summary>Kept tables, and what names a row of them.</summary>
    private static readonly (string Table, string Same)[] _records =
    [
        ("morning", "m.day = o.day AND m.issue = o.issue"),
        ("advice", "m.day = o.day AND m.issue = o.issue"),
        ("report_file", "m.day = o.day AND m.issue = o.issue AND m.name = o.name"),
        ("outbox", "m.message_id = o.message_id"),
    ];

    /// <summary>Rows that were there already and went on: only as far as the tables' own rules let them.</summary>
    private static readonly string[] _wentOn =
    [
        "UPDATE morning SET step = 'computed', sha = o.sha FROM old.morning AS o WHERE o.day = morning.day AND o.issue = morning.issue AND morning.step = 'due' AND o.step IN ('computed', 'written')",
        "UPDATE morning SET step = o.step FROM old.morning AS o WHERE o.day = morning.day AND o.issue = morning.issue AND (morning.step, o.step) IN (VALUES ('computed', 'written'), ('due', 'missed'))",
    ];

    private const string MailWentOn =
        """
        UPDATE outbox SET state = o.state, tries = o.tries, doubts = o.doubts, next_try = o.next_try, said = o.said FROM old.outbox AS o
        WHERE o.message_id = outbox.message_id AND outbox.state IN ('waiting', 'handed-over')
        """;

    /// <summary>Reads it, and brings it along where that is asked for and possible.</summary>
    /// <param name="copy">The copy, opened for writing.</param>
    /// <param name="path">The ledger.</param>
    /// <param name="bring">Add it to the copy.</param>
    internal static NewerRecords Of(SiteLedger copy, string path, bool bring)
    {
        var newer = new NewerRecords(LedgerHistory.Unreadable, [], 0, 0, []);
        try
        {
            using (var old = LedgerDb.Open(path, SqliteOpenMode.ReadWrite, TimeSpan.Zero))
            {
                Schema.Check(old, path);
            }

            copy.Db.Execute("ATTACH $path AS old", ("$path", path));
            try
            {
                newer = Read(copy.Db);
                if (bring && newer.History == LedgerHistory.Same)
                {
                    copy.InOneStep(() => Bring(copy, newer));
                }
            }
            finally
            {
                copy.Db.Execute("DETACH old");
            }

            return newer;
        }
        catch (Exception e) when (e is LedgerException { Trouble: LedgerTrouble.Corrupt or LedgerTrouble.NewerSchema or LedgerTrouble.Io } or SqliteException)
        {
            // Damage may also look like a mistake: a row that is there twice, a table that is not.
            return newer with { History = LedgerHistory.Unreadable };
        }
    }

    private static NewerRecords Read(LedgerDb db)
    {
        var most = db.Number("SELECT coalesce(max(seq), 0) FROM main.input");
        var known = db.Number("SELECT count(*) FROM main.input AS m JOIN old.input AS o ON o.seq = m.seq AND o.kind = m.kind AND o.at = m.at");
        if (known != db.Number("SELECT count(*) FROM main.input"))
        {
            return new(LedgerHistory.Other, [], 0, 0, []);
        }

        return new(
            LedgerHistory.Same,
            db.Query("SELECT name FROM old.file WHERE seq > $most ORDER BY seq", r => r.GetString(0), ("$most", most)),
            db.Number("SELECT count(*) FROM old.logbook WHERE seq > $most", ("$most", most)),
            db.Number("SELECT count(*) FROM old.site_version WHERE seq > $most", ("$most", most)),
            db.Query(
                """
                SELECT o.day, o.issue FROM old.morning AS o WHERE o.step IN ('computed', 'written')
                AND NOT EXISTS (SELECT 1 FROM main.morning AS m WHERE m.day = o.day AND m.issue = o.issue AND m.step = o.step) ORDER BY o.day, o.issue
                """,
                r => (Formats.ToDay(r.GetString(0)), r.GetInt32(1))));
    }

    private static void Bring(SiteLedger copy, NewerRecords newer)
    {
        BringNotices(copy.Db);
        if (!newer.IsEmpty)
        {
            BringRecords(copy);
        }
    }

    /// <summary>What the next sheet has to say: what waits in the ledger, for sheets after the backup have said the rest.</summary>
    private static void BringNotices(LedgerDb db)
    {
        if (db.Number("SELECT count(*) FROM old.sqlite_schema WHERE type = 'table' AND name = 'notice'") > 0)
        {
            db.Execute("DELETE FROM main.notice");
            db.Execute("INSERT INTO main.notice (text) SELECT text FROM old.notice ORDER BY id");
        }
    }

    private static void BringRecords(SiteLedger copy)
    {
        var db = copy.Db;
        var most = db.Number("SELECT coalesce(max(seq), 0) FROM main.input");
        foreach (var table in _inputs)
        {
            db.Execute($"INSERT INTO main.{table} SELECT * FROM old.{table} WHERE seq > $most ORDER BY seq", ("$most", most));
        }

        // What came of files that give no readings stands nowhere else; the others are read again.
        db.Execute("INSERT INTO main.file_read SELECT * FROM old.file_read WHERE seq > $most AND map_sha = ''", ("$most", most));
        var hasMail = db.Number("SELECT count(*) FROM old.sqlite_schema WHERE type = 'table' AND name = 'outbox'") > 0;
        foreach (var (table, same) in _records.Where(r => hasMail || r.Table is not "outbox"))
        {
            db.Execute($"INSERT INTO main.{table} SELECT o.* FROM old.{table} AS o WHERE NOT EXISTS (SELECT 1 FROM main.{table} AS m WHERE {same})");
        }

        foreach (var sql in hasMail ? [.. _wentOn, MailWentOn] : _wentOn)
        {
            db.Execute(sql);
        }

        copy.InvalidateFrom(DateOnly.MinValue);
        var wrong = copy.IntegrityCheck(everyFile: true);
        if (wrong.Count > 0)
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"What the ledger holds beyond the backup is damaged: {wrong[0]}.");
        }
    }
}

/// <summary>How a ledger and a backup belong together.</summary>
public enum LedgerHistory
{
    /// <summary>The ledger begins with all that the backup holds.</summary>
    Same,

    /// <summary>Each holds what the other does not.</summary>
    Other,

    /// <summary>The ledger is damaged, or a newer program's.</summary>
    Unreadable,
}
