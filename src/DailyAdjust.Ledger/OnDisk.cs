using System.ComponentModel;
using System.Runtime.InteropServices;
using System.Text;
using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Ledger;

/// <summary>
/// What .NET does not offer on Unix: flushing a folder to disk (renaming a file does not), hearing that a file could not be flushed (FileStream.Flush and
/// RandomAccess.FlushToDisk of .NET 10 pass over an error of input or output: seen with strace), reading a file that another process has locked, and asking for a right without opening. And whether a disk
/// failed under this process, which every ledger that it has open has to know.
/// </summary>
public static class OnDisk
{
    private const int NoSuchFile = 2;
    private const int AccessDenied = 13;
    private const int ForWriting = 2;

    /// <summary>
    /// Whether a disk failed under this process, by an error of input or output. One for the whole process, and never taken back: whoever closes a ledger need not be who met the failure, and
    /// the process is to end. A restore alone goes on, past a ledger that cannot be read: it moves its copy's log by itself.
    /// </summary>
    public static bool HasFailed { get; private set; }

    /// <summary>From now on no ledger moves its log into its file when it is closed, as SQLite does of its own accord: both stay as they are.</summary>
    public static void TakeAsFailed() => HasFailed = true;

    /// <summary>Makes the folder's names as durable as the files in it. Does nothing on Windows, where a name is kept with its file.</summary>
    /// <exception cref="IOException">The disk refused; its number is the error's <see cref="Exception.HResult"/>.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to the folder.</exception>
    public static void SyncFolder(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            return;
        }

        using var handle = OpenUnlocked(folder);
        if (Sync(handle) != 0)
        {
            throw LastError(folder);
        }
    }

    /// <summary>Makes a file's bytes durable. Once only: a system tells of a failed flush once, and of the next one that all is well.</summary>
    /// <exception cref="IOException">The disk refused; its number is the error's <see cref="Exception.HResult"/>.</exception>
    public static void SyncFile(FileStream file)
    {
        ArgumentNullException.ThrowIfNull(file);
        file.Flush(flushToDisk: OperatingSystem.IsWindows());
        if (!OperatingSystem.IsWindows() && Sync(file.SafeFileHandle) != 0)
        {
            throw LastError(file.Name);
        }
    }

    /// <summary>Whether this user may write to a file; it is not opened.</summary>
    public static bool MayWrite(string path) => OperatingSystem.IsWindows()
        ? !File.GetAttributes(path).HasFlag(FileAttributes.ReadOnly)
        : Access(Encoding.UTF8.GetBytes(path + '\0'), ForWriting) == 0;

    /// <summary>What the system's last call came to, as .NET's own calls would say it.</summary>
    public static Exception LastError(string path)
    {
        var error = Marshal.GetLastPInvokeError();
        var message = $"{path}: {new Win32Exception(error).Message}";
        return error switch
        {
            NoSuchFile => new FileNotFoundException(message, path),
            AccessDenied => new UnauthorizedAccessException(message),
            _ => new IOException(message, error),
        };
    }

    /// <summary>Opens for reading beside whoever holds a lock on it; Unix alone.</summary>
    /// <exception cref="IOException">It cannot be opened.</exception>
    internal static SafeFileHandle OpenUnlocked(string path)
    {
        var descriptor = Open(Encoding.UTF8.GetBytes(path + '\0'), OperatingSystem.IsMacOS() ? 0x1000000 : 0x80000);
        return descriptor < 0 ? throw LastError(path) : new SafeFileHandle(descriptor, ownsHandle: true);
    }

    // Read-only, closed in child processes.
    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "access")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Access(byte[] path, int mode);

    [DllImport("libc", EntryPoint = "fsync", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Sync(SafeFileHandle descriptor);
}
