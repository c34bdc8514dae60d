using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger;

/// <summary>Turns what SQLite and the file system report into <see cref="LedgerException"/>.</summary>
internal static class Troubles
{
    // Result codes: https://www.sqlite.org/rescode.html
    private const int Permission = 3;
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int IoError = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int Authorization = 23;
    private const int NotADatabase = 26;

    /// <summary>Growing the shared memory file beside the ledger failed, which is how a full disk shows there.</summary>
    private const int IoErrorSharedMemorySize = 4874;

    /// <summary>Null = no trouble of the disk or of other processes but a mistake of the caller: let it through.</summary>
    public static LedgerException? From(SqliteException e, string path) => e.SqliteErrorCode switch
    {
        IoError or CannotOpen when IsFolderGone(path) => NoFolder(path, e),
        Full => NoRoom(path, e),
        IoError when e.SqliteExtendedErrorCode == IoErrorSharedMemorySize => NoRoom(path, e),
        CannotOpen when NoFileCanBeOpened() => TooManyOpen(path, e),
        Permission or ReadOnly or CannotOpen or Authorization => NoRight(path, e),
        Busy or Locked => new LedgerException(
            LedgerTrouble.Busy, $"The ledger {path} is in use by another process. Try again when that one has finished.", e),
        IoError => new LedgerException(
            LedgerTrouble.Io, $"The disk failed under the ledger {path} ({e.Message}). Look after the disk before anything is written again.", e),
        Corrupt or NotADatabase => new LedgerException(
            LedgerTrouble.Corrupt, $"The ledger {path} is damaged or is not a ledger ({e.Message}). Restore a backup.", e),
        _ => null,
    };

    /// <summary>Null = not a trouble of this kind.</summary>
    public static LedgerException? From(Exception e, string path) => e switch
    {
        UnauthorizedAccessException => NoRight(path, e),
        IOException when DiskError.IsReadOnly(e) => NoRight(path, e),
        IOException when DiskError.IsExhausted(e) => TooManyOpen(path, e),
        IOException when IsFolderGone(path) => NoFolder(path, e),
        IOException when DiskError.IsFull(e) => NoRoom(path, e),

        // Whatever else it is: beside a ledger nothing is written that is not understood.
        IOException => new LedgerException(LedgerTrouble.Io, $"The disk failed beside the ledger {path} ({e.Message}).", e),
        _ => null,
    };

    /// <summary>Does something with files beside a ledger, with the troubles of the disk as <see cref="LedgerException"/>.</summary>
    public static T Translated<T>(string path, Func<T> work)
    {
        try
        {
            return work();
        }
        catch (Exception e) when (From(e, path) is { } trouble)
        {
            if (trouble.Trouble == LedgerTrouble.Io)
            {
                OnDisk.TakeAsFailed();
            }

            throw From(e, path)!;
        }
    }

    private static LedgerException NoRoom(string path, Exception e) =>
        new(LedgerTrouble.Full, $"No room on the disk for the ledger {path}. Free some space; nothing was lost.", e);

    /// <summary>Somebody took the course away, or its disk is not there: no disk failed.</summary>
    private static LedgerException NoFolder(string path, Exception e) =>
        new(LedgerTrouble.Missing, $"The folder of the ledger {path} does not exist.", e);

    private static LedgerException NoRight(string path, Exception e) =>
        new(LedgerTrouble.Denied, $"No right to write or open the ledger {path}. Check the rights of the file and its folder, and whether the disk may be written to ({Bare(e)}).", e);

    private static LedgerException TooManyOpen(string path, Exception e) =>
        new(LedgerTrouble.Denied, $"Too many files are open at once to open the ledger {path}. Raise the limit of the service, or close what else runs ({Bare(e)}).", e);

    private static bool IsFolderGone(string path) => !Directory.Exists(Path.GetDirectoryName(Path.GetFullPath(path)));

    private static string Bare(Exception e) => e.Message.TrimEnd('.');

    /// <summary>
    /// SQLite says only that it cannot open a file; the system says why when another one is opened. Never the ledger itself: closing it would let go of every lock that this
    /// process has on it (https://www.sqlite.org/howtocorrupt.html, 2.2).
    /// </summary>
    private static bool NoFileCanBeOpened()
    {
        try
        {
            using var program = File.OpenHandle(Environment.ProcessPath ?? typeof(Troubles).Assembly.Location);
            return false;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return e is IOException && DiskError.IsExhausted(e);
        }
    }
}
