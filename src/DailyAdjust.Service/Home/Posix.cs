using System.Runtime.InteropServices;
using System.Text;
using DailyAdjust.Ledger;
using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>
/// What .NET does not offer on Unix: opening a file without following a link and without waiting for the other end of a pipe, and asking whether another program holds it locked.
/// </summary>
internal static class Posix
{
    private const int NoSuchDevice = 6;

    private const int SharedLock = 1;
    private const int NotWaiting = 4;
    private const int Unlock = 8;

    /// <summary>The numbers of the flags differ by system and processor; null where they are not known here.</summary>
    private static readonly OpenFlags? Flags = FlagsOfThisMachine();

    public static bool Available => Flags is not null;

    /// <summary>Whether opening failed because the name is a link.</summary>
    public static bool IsLink(IOException error) => error.HResult == (OperatingSystem.IsMacOS() ? 62 : 40);

    /// <summary>Whether opening failed because the name is a socket or the like.</summary>
    public static bool IsNoFile(IOException error) => error.HResult == NoSuchDevice;

    /// <summary>Opens for reading; a link, or a pipe without a writer, never blocks and never leads elsewhere.</summary>
    /// <exception cref="IOException">The file cannot be opened, or is a link.</exception>
    public static SafeFileHandle OpenWithoutFollowing(string path)
    {
        var flags = Flags ?? throw new PlatformNotSupportedException();
        var descriptor = Open(Encoding.UTF8.GetBytes(path + '\0'), flags.NonBlocking | flags.NoFollow | flags.CloseOnExec);
        return descriptor < 0
            ? throw OnDisk.LastError(path)
            : new SafeFileHandle(descriptor, ownsHandle: true);
    }

    /// <summary>Whether another program holds the file locked for itself; where locks are not known, nobody does.</summary>
    public static bool IsLocked(SafeFileHandle handle)
    {
        if (Flags is null)
        {
            return false;
        }

        var descriptor = (int)handle.DangerousGetHandle();
        if (Lock(descriptor, SharedLock | NotWaiting) == 0)
        {
            _ = Lock(descriptor, Unlock);
            return false;
        }

        return Marshal.GetLastPInvokeError() == (OperatingSystem.IsMacOS() ? 35 : 11);
    }

    private static OpenFlags? FlagsOfThisMachine()
    {
        var arm = RuntimeInformation.ProcessArchitecture is Architecture.Arm64 or Architecture.Arm;
        return OperatingSystem.IsLinux() ? new(0x800, arm ? 0x8000 : 0x20000, 0x80000)
            : OperatingSystem.IsMacOS() ? new(0x4, 0x100, 0x1000000)
            : null;
    }

    [DllImport("libc", EntryPoint = "open", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Open(byte[] path, int flags);

    [DllImport("libc", EntryPoint = "flock", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int Lock(int descriptor, int operation);

    private readonly record struct OpenFlags(int NonBlocking, int NoFollow, int CloseOnExec);
}
