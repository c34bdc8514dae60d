using System.Text;

namespace DailyAdjust.Service.Home;

/// <summary>
/// Writes a file so that a reader sees the old one or the new one, never half of one, and so that it is on the disk
/// when the call returns: a temporary file in the same folder, flushed, renamed, and the folder flushed. Who may read and write it stays as it was.
/// </summary>
public static class AtomicFile
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static void Write(string path, string text) => Write(path, Utf8.GetBytes(text));

    /// <exception cref="IOException">The disk refused; the old file, if there was one, is whole.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to write there.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        Directory.CreateDirectory(folder);
        var temporary = Path.Combine(folder, $".{Path.GetFileName(path)}.{Environment.ProcessId}.tmp");
        try
        {
            using (var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None))
            {
                stream.Write(bytes);
                stream.Flush(flushToDisk: true);
            }

            if (!OperatingSystem.IsWindows() && File.Exists(path))
            {
                File.SetUnixFileMode(temporary, File.GetUnixFileMode(path));
            }

            File.Move(temporary, path, overwrite: true);
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }

        Posix.SyncFolder(folder);
    }

    /// <summary>Moves a file under a name that is still free in the folder ("name.2.csv" where "name.csv" is taken) and returns that name.</summary>
    public static string MoveInto(string path, string folder) => MoveInto(path, folder, Path.GetFileName(path));

    /// <summary>Writes a file under a name that is still free in the folder, and returns that name.</summary>
    public static string WriteInto(string folder, string name, ReadOnlySpan<byte> bytes)
    {
        var whole = Path.Combine(folder, $".{name}.{Environment.ProcessId}.new");
        Write(whole, bytes);
        return MoveInto(whole, folder, name);
    }

    /// <summary>"name.2.csv" for "name.csv"; the first has no number.</summary>
    public static string Numbered(string name, int count) => count == 1
        ? name
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(name)}.{count}{Path.GetExtension(name)}");

    private static string MoveInto(string path, string folder, string name)
    {
        Directory.CreateDirectory(folder);
        for (var count = 1; ; count++)
        {
            var target = Path.Combine(folder, Numbered(name, count));
            if (Path.Exists(target) || new FileInfo(target).LinkTarget is not null)
            {
                continue;
            }

            try
            {
                File.Move(path, target, overwrite: false);
            }
            catch (IOException) when (Path.Exists(target))
            {
                continue; // somebody else took the name in between
            }

            Posix.SyncFolder(folder);
            Posix.SyncFolder(Path.GetDirectoryName(Path.GetFullPath(path))!);
            return Path.GetFileName(target);
        }
    }
}
