using System.Globalization;
using System.Text;

namespace DailyAdjust.Ledger;

/// <summary>
/// A file that one process holds at a time. The operating system lets go of it when the process ends, however it ends; the file stays. It names its holder.
/// </summary>
public static class LockFile
{
    private const int LongestName = 200;

    /// <summary>Takes the lock; closing the file lets go of it.</summary>
    /// <exception cref="IOException">Also when another process holds it: <see cref="IsHeld"/>.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to the file or its folder.</exception>
    public static FileStream Take(string path)
    {
        var file = new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, bufferSize: 0);
        try
        {
            file.SetLength(0);
            file.Write(Encoding.UTF8.GetBytes(Me()));
        }
        catch (IOException e) when (DiskError.IsFull(e))
        {
            // The lock holds without a name.
        }
        catch
        {
            file.Dispose();
            throw;
        }

        return file;
    }

    /// <summary>Whether taking a lock failed because another process holds it.</summary>
    public static bool IsHeld(IOException e) =>
        // EWOULDBLOCK is 11 on Linux and 35 on macOS; a sharing violation is 32 and a lock violation 33 on Windows.
        e.GetType() == typeof(IOException) && (e.HResult & 0xFFFF) is 11 or 35 or 32 or 33;

    /// <summary>"process 1234, dailyadjust serve"; null = it does not say (on Windows a locked file cannot be read).</summary>
    public static string? HolderOf(string path)
    {
        try
        {
            using var handle = OperatingSystem.IsWindows() ? File.OpenHandle(path, share: FileShare.ReadWrite) : OnDisk.OpenUnlocked(path);
            var bytes = new byte[LongestName];
            var text = Encoding.UTF8.GetString(bytes, 0, RandomAccess.Read(handle, bytes, 0)).Trim();
            return text.Length > 0 ? text : null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }

    private static string Me()
    {
        // The command's name alone: what follows it may be anything.
        var line = Environment.GetCommandLineArgs();
        var command = line.Length > 1 && !line[1].StartsWith('-') && line[1].Length < LongestName / 4 ? " " + line[1] : "";
        return string.Create(CultureInfo.InvariantCulture, $"process {Environment.ProcessId}, {Path.GetFileNameWithoutExtension(line[0])}{command}\n");
    }
}
