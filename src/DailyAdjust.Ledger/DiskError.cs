namespace DailyAdjust.Ledger;

/// <summary>What a system's number for an error says of the disk. Numbers below 256 are those of Linux and macOS, or of Windows where that is said.</summary>
public static class DiskError
{
    /// <summary>No room: ENOSPC is 28, EDQUOT 122 on Linux and 69 on macOS; ERROR_DISK_FULL is 112 and ERROR_HANDLE_DISK_FULL 39 on Windows.</summary>
    public static bool IsFull(Exception e) => OperatingSystem.IsWindows()
        ? NumberOf(e) is 112 or 39
        : NumberOf(e) == 28 || NumberOf(e) == (OperatingSystem.IsMacOS() ? 69 : 122);

    /// <summary>It may only be read: EROFS is 30; ERROR_WRITE_PROTECT is 19 on Windows.</summary>
    public static bool IsReadOnly(Exception e) => NumberOf(e) == (OperatingSystem.IsWindows() ? 19 : 30);

    /// <summary>Too many files are open: ENFILE is 23 and EMFILE 24; ERROR_TOO_MANY_OPEN_FILES is 4 on Windows.</summary>
    public static bool IsExhausted(Exception e) => OperatingSystem.IsWindows() ? NumberOf(e) == 4 : NumberOf(e) is 23 or 24;

    /// <summary>An error of input or output: EIO is 5; ERROR_IO_DEVICE is 1117 on Windows.</summary>
    public static bool IsFailed(Exception e) => NumberOf(e) == (OperatingSystem.IsWindows() ? 1117 : 5);

    private static int NumberOf(Exception e) => e.HResult & 0xFFFF;
}
