using System.Globalization;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>Checking the file and copying it.</summary>
internal static class Care
{
    public static IReadOnlyList<string> Check(SiteLedger ledger, bool everyFile)
    {
        var found = Structure(ledger.Db);
        if (everyFile && found.Count == 0)
        {
            found.AddRange(ledger.Files.Damaged().Select(f => FormattableString.Invariant($"file {f.Seq} ({f.Name}) does not unpack to its hash")));
        }

        return found;
    }

    public static void Backup(SiteLedger ledger, string path)
    {
        if (File.Exists(path))
        {
            throw new IOException($"{path} exists already; a backup never overwrites anything.");
        }

        Write(ledger, path);
    }

    /// <summary>
    /// The copy that is made before the tables are brought up, whoever does it: in the folder of backups beside the ledger, where no rule of age removes it. Made
    /// again after a program that was stopped in between, for an older one may have written since.
    /// </summary>
    public static void BackupBeforeTables(SiteLedger ledger, int version)
    {
        var folder = SiteLedger.BackupsOf(ledger.Path);
        Troubles.Translated(ledger.Path, () => Directory.CreateDirectory(folder));
        Write(ledger, Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"before-tables-{version}-at-input-{ledger.Watermark}.db")));
    }

    private static void Write(SiteLedger ledger, string path)
    {
        if (!Directory.Exists(Path.GetDirectoryName(path)))
        {
            throw new LedgerException(LedgerTrouble.Missing, $"The folder for the backup {path} does not exist.");
        }

        // Under another name until it is known good, so that a copy cut short is never taken for a backup.
        var part = path + ".part";
        try
        {
            File.Delete(part);
            var before = Counts(ledger.Db);
            Copy(ledger.Db, part);
            var after = Counts(ledger.Db);
            Verify(part, before, after);
            using (var file = new FileStream(part, FileMode.Open, FileAccess.ReadWrite))
            {
                OnDisk.SyncFile(file);
            }

            // A path that is taken already is one of the copies before new tables, made again.
            File.Move(part, path, overwrite: true);
            OnDisk.SyncFolder(Path.GetDirectoryName(path)!);
        }
        catch (Exception e) when (e is not LedgerException && Troubles.From(e, path) is not null)
        {
            throw Troubles.From(e, path)!;
        }
        finally
        {
            File.Delete(part);
        }
    }

    private static void Copy(LedgerDb db, string path)
    {
        var isRead = db.Number("PRAGMA query_only") > 0;
        try
        {
            db.AllowChanges(true);
            db.Execute("VACUUM INTO $path", ("$path", path));
        }
        catch (LedgerException e)
        {
            throw new LedgerException(e.Trouble, $"The backup {path} could not be written. {e.Message}", e);
        }
        finally
        {
            db.AllowChanges(!isRead);
        }
    }

    private static void Verify(string path, List<long> before, List<long> after)
    {
        using var copy = LedgerDb.Open(path, SqliteOpenMode.ReadOnly, TimeSpan.Zero);
        var wrong = Structure(copy);
        var counts = Counts(copy);
        for (var i = 0; i < counts.Count; i++)
        {
            // Kept tables only grow, and a writer may have added to them while the copy was made.
            if (counts[i] < before[i] || counts[i] > after[i])
            {
                wrong.Add(FormattableString.Invariant($"table {Schema.KeptTables[i]} has {counts[i]} rows, {before[i]} to {after[i]} were expected"));
            }
        }

        if (wrong.Count > 0)
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"The copy {path} is not whole and was removed: {string.Join("; ", wrong)}.");
        }
    }

    public static List<string> Structure(LedgerDb db)
    {
        var found = db.Query("PRAGMA integrity_check(20)", r => r.GetString(0)).FindAll(s => !string.Equals(s, "ok", StringComparison.Ordinal));
        found.AddRange(db.Query("PRAGMA foreign_key_check", r => $"a row of {r.GetString(0)} points to nothing in {r.GetString(2)}"));
        return found;
    }

    private static List<long> Counts(LedgerDb db) => [.. Schema.KeptTables.Select(t => db.HasTable(t) ? db.Number($"SELECT count(*) FROM {t}") : 0)];
}
