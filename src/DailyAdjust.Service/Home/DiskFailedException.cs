namespace DailyAdjust.Service.Home;

/// <summary>The disk failed under something that was being written: nothing more may be written until somebody has looked after it.</summary>
public sealed class DiskFailedException(string path, IOException inner) : IOException($"The disk failed under {path} ({inner.Message}). Look after the disk before anything is written again.", inner)
{
    /// <summary>Whether the system calls it an error of input or output (EIO is 5 on Linux and macOS; ERROR_IO_DEVICE is 1117 on Windows).</summary>
    public static bool Means(IOException failure) => failure is not DiskFailedException && (failure.HResult & 0xFFFF) == (OperatingSystem.IsWindows() ? 1117 : 5);
}
