using System.Globalization;

namespace DailyAdjust.Ledger;

/// <summary>The tables, and how an older ledger is brought up to them.</summary>
internal static class Schema
{
    /// <summary>Marks the file as a ledger in SQLite's header ("DALE").</summary>
    public const int ApplicationId = 0x44414C45;

    /// <summary>Element n brings a ledger from version n to n + 1.</summary>
    private static readonly string[] _steps = [SchemaVersion1.Sql, SchemaVersion2.Sql, SchemaVersion3.Sql, SchemaVersion4.Sql];

    public static int Version => _steps.Length;

    /// <summary>A ledger of this version or later can be read as it stands: what came after it only added tables.</summary>
    public const int ReadableFrom = 1;

    /// <summary>Tables whose rows are never removed, so that a copy can be counted against the original.</summary>
    public static IReadOnlyList<string> KeptTables { get; } =
        ["input", "file", "file_chunk", "logbook", "site_version", "morning", "advice", "report_file", "outbox"];

    /// <summary>The version found, without changing anything.</summary>
    /// <exception cref="LedgerException">NewerSchema, or Corrupt where the file is something else.</exception>
    public static int Check(LedgerDb db, string path)
    {
        var application = db.Number("PRAGMA application_id");
        var found = (int)db.Number("PRAGMA user_version");
        var isEmpty = application == 0 && found == 0 && db.Number("SELECT count(*) FROM sqlite_schema") == 0;
        if (!isEmpty && application != ApplicationId)
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"{path} is an SQLite file of another program, not a ledger.");
        }

        if (found > Version)
        {
            throw new LedgerException(
                LedgerTrouble.NewerSchema,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The ledger {path} was written by a newer DailyAdjust (its tables are version {found}, this program knows {Version}). Use that version of the program; nothing was changed."));
        }

        return found;
    }

    /// <summary>Brings the ledger up to <see cref="Version"/>, all of it or nothing.</summary>
    public static void BringUp(LedgerDb db, string path)
    {
        if (Check(db, path) == Version)
        {
            return;
        }

        db.InOneStep(() =>
        {
            for (var from = Check(db, path); from < Version; from++)
            {
                db.Execute(_steps[from]);
            }

            db.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA application_id = {ApplicationId}"));
            return db.Execute(string.Create(CultureInfo.InvariantCulture, $"PRAGMA user_version = {Version}"));
        });
    }
}
