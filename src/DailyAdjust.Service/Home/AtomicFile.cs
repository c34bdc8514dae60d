using System.Globalization;
using System.Text;
using DailyAdjust.Ledger;

namespace DailyAdjust.Service.Home;

/// <summary>
/// Writes a file so that a reader sees the old one or the new one, never half of one, and so that it is on the disk
/// when the call returns: a temporary file in the same folder, flushed, renamed, and the folder flushed. Who may read and write it stays as it was.
/// </summary>
public static class AtomicFile
{
    private const string Temporary = ".tmp";

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Writes a text, as UTF-8 without a mark at its beginning.</summary>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static void Write(string path, string text) => Write(path, Utf8.GetBytes(text));

    /// <summary>Writes a file; its folder is made where there is none.</summary>
    /// <exception cref="DiskFailedException">The disk failed: whether the file is there after a power cut cannot be said.</exception>
    /// <exception cref="IOException">The disk refused; the old file, if there was one, is whole.</exception>
    /// <exception cref="UnauthorizedAccessException">No right to write there.</exception>
    public static void Write(string path, ReadOnlySpan<byte> bytes)
    {
        var (folder, name) = Parts(path);
        try
        {
            Replace(folder, name, bytes);
            OnDisk.SyncFolder(folder);
            Leftovers.Remove(folder, name, Temporary);
        }
        catch (IOException failure) when (DiskFailedException.Means(failure))
        {
            throw DiskFailedException.Under(path, failure);
        }
    }

    /// <summary>Writes several files of a folder, each whole; the folder is flushed once, when all of them are there.</summary>
    /// <param name="folder">Made where there is none.</param>
    /// <param name="files">Names and bytes, at least one, in the order in which they are written. Where the disk refuses one, those before it are the new ones.</param>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static void WriteAll(string folder, IReadOnlyList<KeyValuePair<string, byte[]>> files)
    {
        var path = folder;
        try
        {
            foreach (var (name, bytes) in files)
            {
                path = Path.Combine(folder, name);
                Replace(folder, name, bytes);
            }

            path = folder;
            OnDisk.SyncFolder(folder);
            foreach (var (name, _) in files)
            {
                Leftovers.Remove(folder, name, Temporary);
            }
        }
        catch (IOException failure) when (DiskFailedException.Means(failure))
        {
            throw DiskFailedException.Under(path, failure);
        }
    }

    /// <summary>Moves a file under a name that is still free in the folder ("name.2.csv" where "name.csv" is taken) and returns that name.</summary>
    /// <param name="path">The file.</param>
    /// <param name="folder">On the same disk.</param>
    /// <param name="before">Told the name before the file goes: what belongs beside it is then there when it is, whatever happens in between.</param>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static string MoveInto(string path, string folder, Action<string>? before = null) => MoveInto(path, folder, Path.GetFileName(path), before);

    /// <summary>Writes a file under a name that is still free in the folder, and returns that name.</summary>
    /// <inheritdoc cref="Write(string, ReadOnlySpan{byte})"/>
    public static string WriteInto(string folder, string name, ReadOnlySpan<byte> bytes)
    {
        try
        {
            var temporary = WriteTemporary(folder, name, bytes);
            var kept = MoveInto(temporary, folder, name, before: null);
            Leftovers.Remove(folder, name, Temporary);
            return kept;
        }
        catch (IOException failure) when (DiskFailedException.Means(failure))
        {
            throw DiskFailedException.Under(Path.Combine(folder, name), failure);
        }
    }

    /// <summary>"name.2.csv" for "name.csv"; the first has no number.</summary>
    public static string Numbered(string name, int count) => count == 1
        ? name
        : string.Create(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(name)}.{count}{Path.GetExtension(name)}");

    /// <summary>Puts flushed bytes in a file's place.</summary>
    private static void Replace(string folder, string name, ReadOnlySpan<byte> bytes)
    {
        var path = Path.Combine(folder, name);
        var temporary = WriteTemporary(folder, name, bytes);
        try
        {
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
    }

    /// <returns>The path of a flushed file that nobody else knows.</returns>
    private static string WriteTemporary(string folder, string name, ReadOnlySpan<byte> bytes)
    {
        MakeFolder(folder);
        var temporary = Path.Combine(folder, Leftovers.NameOf(name, Temporary));
        try
        {
            using var stream = new FileStream(temporary, FileMode.Create, FileAccess.Write, FileShare.None);
            stream.Write(bytes);
            OnDisk.SyncFile(stream);
            return temporary;
        }
        catch
        {
            File.Delete(temporary);
            throw;
        }
    }

    /// <summary>A new folder's name is as durable as the files in it.</summary>
    private static void MakeFolder(string folder)
    {
        if (Directory.Exists(folder))
        {
            return;
        }

        if (Path.GetDirectoryName(folder) is { } parent)
        {
            MakeFolder(parent);
            Directory.CreateDirectory(folder);
            OnDisk.SyncFolder(parent);
        }
    }

    private static string MoveInto(string path, string folder, string name, Action<string>? before)
    {
        try
        {
            MakeFolder(folder);
            return MoveToFreeName(path, folder, name, before);
        }
        catch (IOException failure) when (DiskFailedException.Means(failure))
        {
            throw DiskFailedException.Under(Path.Combine(folder, name), failure);
        }
    }

    private static string MoveToFreeName(string path, string folder, string name, Action<string>? before)
    {
        for (var count = 1; ; count++)
        {
            var target = Path.Combine(folder, Numbered(name, count));
            if (Path.Exists(target) || new FileInfo(target).LinkTarget is not null)
            {
                continue;
            }

            before?.Invoke(Path.GetFileName(target));
            try
            {
                File.Move(path, target, overwrite: false);
            }
            catch (IOException) when (Path.Exists(target))
            {
                continue; // somebody else took the name in between
            }
            catch (UnauthorizedAccessException)
            {
                TakeBack(path, target);
                throw;
            }

            OnDisk.SyncFolder(folder);
            OnDisk.SyncFolder(Parts(path).Folder);
            return Path.GetFileName(target);
        }
    }

    /// <summary>A move that never overwrites is a second name and then the end of the first one: where that is forbidden, the second name must go again.</summary>
    private static void TakeBack(string path, string target)
    {
        if (FileState.Of(new FileInfo(path)) is { } stays && FileState.Of(new FileInfo(target)) == stays)
        {
            File.Delete(target);
        }
    }

    private static (string Folder, string Name) Parts(string path) => (Path.GetDirectoryName(Path.GetFullPath(path))!, Path.GetFileName(path));
}
