using System.Globalization;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>
/// Puts a backup in the place of a ledger: copied to another name, verified there, the old files moved aside together, the copy renamed. Holds the writer's lock
/// from beginning to end. Stopped anywhere, the old ledger is in force, or nothing is and the next restore begins from the old one again.
/// </summary>
public sealed class LedgerRestore : IDisposable
{
    /// <summary>What SQLite keeps beside a ledger, in the order in which they are moved back.</summary>
    private static readonly string[] _beside = ["-shm", "-wal", "-journal"];

    private readonly LedgerLock _held;
    private readonly string _path;
    private readonly string _setAside;
    private SiteLedger? _copy;
    private bool _moving;

    private LedgerRestore(LedgerLock held, string path, string setAside)
    {
        _held = held;
        _path = path;
        _setAside = setAside;
    }

    /// <summary>The verified copy, with this program's tables, before it takes the ledger's place.</summary>
    public SiteLedger Copied => _copy ?? throw new InvalidOperationException("Nothing was copied yet.");

    private string CopyPath => CopyOf(_path);

    /// <param name="path">Of the ledger; there need not be one.</param>
    /// <param name="setAside">The folder of the folders with ledgers that were set aside.</param>
    /// <param name="wait">How long to wait for another writer.</param>
    /// <exception cref="LedgerException">Busy, with who holds the ledger; Denied, Missing, Full or Io.</exception>
    public static LedgerRestore Begin(string path, string setAside, TimeSpan wait)
    {
        var full = Path.GetFullPath(path);
        LocalDisk.Require(full);
        var held = LedgerLock.Take(full, wait);
        try
        {
            return Troubles.Translated(full, () =>
            {
                TakeUpCutShort(full, setAside);
                return new LedgerRestore(held, full, setAside);
            });
        }
        catch
        {
            held.Dispose();
            throw;
        }
    }

    /// <summary>Copies a backup beside the ledger, verifies every stored file of it, and brings its tables up.</summary>
    /// <param name="backup">A backup, or a ledger that was set aside (its log, if there is one, beside it).</param>
    /// <exception cref="LedgerException">Corrupt, NewerSchema, Missing; Full, Denied, Io.</exception>
    public void Copy(string backup) => Troubles.Translated(_path, () =>
    {
        if (!File.Exists(backup))
        {
            throw new LedgerException(LedgerTrouble.Missing, $"There is no file {backup}.");
        }

        DeleteCopy();
        File.Copy(backup, CopyPath);
        if (File.Exists(backup + "-wal"))
        {
            File.Copy(backup + "-wal", CopyPath + "-wal");
        }

        Writable(CopyPath);
        Writable(CopyPath + "-wal");
        try
        {
            RequireBackup(backup);
        }
        catch (LedgerException e) when (e is { Trouble: LedgerTrouble.Corrupt, InnerException: SqliteException sqlite })
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"{backup} is damaged, or no backup ({sqlite.Message}). Choose another one: `dailyadjust restore` without a file lists them.", e);
        }

        _copy = SiteLedger.OpenToWrite(CopyPath, TimeSpan.Zero, held: null);
        RequireWhole(_copy.IntegrityCheck(everyFile: true), backup);
        return 0;
    });

    private void RequireBackup(string backup)
    {
        using var found = LedgerDb.Open(CopyPath, SqliteOpenMode.ReadWrite, TimeSpan.Zero);
        if (Schema.Check(found, backup) == 0)
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"{backup} is empty: it is no backup.");
        }

        RequireWhole(Care.Structure(found), backup);
    }

    /// <summary>What the ledger that is to be replaced holds beyond the copy; null = there is none.</summary>
    /// <param name="bring">Also adds it to the copy: all of it or nothing.</param>
    public NewerRecords? Newer(bool bring) => File.Exists(_path) ? NewerRecords.Of(Copied, _path, bring) : null;

    /// <summary>The copy takes the ledger's place.</summary>
    /// <param name="aside">The name of a folder, among those set aside, for the files that were there.</param>
    /// <returns>That folder; null = there were none.</returns>
    public string? Swap(string aside) => Troubles.Translated(_path, () =>
    {
        Copied.Db.Execute("PRAGMA wal_checkpoint(TRUNCATE)");
        Copied.Db.Execute("PRAGMA journal_mode = DELETE");
        Copied.Dispose();
        _copy = null;
        var folder = File.Exists(_path) ? FreeFolder(Path.Combine(_setAside, aside)) : null;
        if (folder is not null)
        {
            Directory.CreateDirectory(folder);
            OnDisk.SyncFolder(_setAside);
            OnDisk.SyncFolder(Path.GetDirectoryName(_path)!);
        }

        _moving = true;
        try
        {
            if (folder is not null)
            {
                MoveAside(folder);
            }

            File.Move(CopyPath, _path);
        }
        catch
        {
            // Somebody has one of the files open, where that keeps it from being moved.
            TakeUpCutShort(_path, _setAside);
            throw;
        }

        OnDisk.SyncFolder(Path.GetDirectoryName(_path)!);
        return folder;
    });

    public void Dispose()
    {
        _copy?.Dispose();
        if (!_moving || File.Exists(_path))
        {
            DeleteCopy();
        }

        _held.Dispose();
    }

    /// <summary>Between the old ledger and the new one there is none, and then nobody may begin an empty one.</summary>
    /// <exception cref="LedgerException">Lost.</exception>
    internal static void RequireNoneCutShort(string path)
    {
        if (!File.Exists(path) && (File.Exists(CopyOf(path)) || File.Exists(path + "-wal")))
        {
            throw new LedgerException(
                LedgerTrouble.Lost,
                $"The ledger {path} is not there, but files that belong to it are: a restore was cut short, or somebody took the ledger away. "
                    + "Nothing is lost: run `dailyadjust restore` with the backup again.");
        }
    }

    private static string CopyOf(string path) => path + ".restoring";

    /// <summary>A restore that was stopped after it had begun to move files: they are moved back.</summary>
    private static void TakeUpCutShort(string path, string setAside)
    {
        if (File.Exists(path) || !File.Exists(CopyOf(path)) || !Directory.Exists(setAside))
        {
            return;
        }

        var name = Path.GetFileName(path);
        var newest = Directory.GetDirectories(setAside).Order(StringComparer.Ordinal).LastOrDefault(folder => File.Exists(Path.Combine(folder, name)));
        if (newest is not null)
        {
            foreach (var suffix in _beside.Append("").Where(suffix => File.Exists(Path.Combine(newest, name) + suffix) && !File.Exists(path + suffix)))
            {
                File.Move(Path.Combine(newest, name) + suffix, path + suffix);
            }

            OnDisk.SyncFolder(Path.GetDirectoryName(path)!);
        }
    }

    private static void RequireWhole(IReadOnlyList<string> wrong, string backup)
    {
        if (wrong.Count > 0)
        {
            throw new LedgerException(LedgerTrouble.Corrupt, $"The backup {backup} is damaged ({wrong[0]}). Nothing was changed; take another one.");
        }
    }

    private static void Writable(string path)
    {
        // A copy of a write-protected backup is write-protected too.
        if (File.Exists(path))
        {
            File.SetAttributes(path, File.GetAttributes(path) & ~FileAttributes.ReadOnly);
        }
    }

    private static string FreeFolder(string wanted)
    {
        var folder = wanted;
        for (var count = 2; Directory.Exists(folder); count++)
        {
            folder = string.Create(CultureInfo.InvariantCulture, $"{wanted}-{count}");
        }

        return folder;
    }

    private void MoveAside(string folder)
    {
        // The ledger first: without it nobody opens what is left.
        foreach (var suffix in _beside.Prepend("").Where(suffix => File.Exists(_path + suffix)))
        {
            File.Move(_path + suffix, Path.Combine(folder, Path.GetFileName(_path) + suffix));
        }

        OnDisk.SyncFolder(folder);
    }

    private void DeleteCopy()
    {
        foreach (var suffix in _beside.Append(""))
        {
            File.Delete(CopyPath + suffix);
        }
    }
}
