using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>Why a file that somebody else put there cannot be read.</summary>
public enum FileTrouble
{
    None,

    /// <summary>A symbolic link: not followed.</summary>
    Link,

    /// <summary>A pipe, a device, a socket.</summary>
    NotRegular,

    /// <summary>More bytes than are taken.</summary>
    TooLarge,

    /// <summary>No right to read it.</summary>
    Denied,

    /// <summary>It went away, or shrank while it was read.</summary>
    Vanished,
}

/// <summary>The bytes of a file, or what was wrong with it.</summary>
public sealed record FileContent(byte[]? Bytes, FileTrouble Trouble, string Why);

/// <summary>A file that was opened, or what was wrong with it.</summary>
public sealed record OpenedFile(IncomingFile? File, FileTrouble Trouble, string Why) : IDisposable
{
    public void Dispose() => File?.Dispose();
}

/// <summary>Reads files that somebody else put there: a link or a pipe is told apart before a byte is read.</summary>
public static class RegularFile
{
    private const string LinkText = "It is a link; links are not followed. Copy the file itself.";

    /// <summary>All of a file's bytes.</summary>
    /// <param name="path">The file.</param>
    /// <param name="largest">The most bytes that are read into memory.</param>
    /// <param name="followLinks">For files that a person names on the command line.</param>
    /// <exception cref="IOException">A sick disk, or too many open files: not this file's fault.</exception>
    public static FileContent Read(string path, long largest, bool followLinks = false)
    {
        using var opened = Open(path, largest, followLinks);
        try
        {
            return new(opened.File?.ReadAll(), opened.Trouble, opened.Why);
        }
        catch (EndOfStreamException)
        {
            return new(null, FileTrouble.Vanished, "It became shorter while it was read. Copy it again.");
        }
    }

    /// <summary>Opens a file to be read piece by piece; to be closed in any case.</summary>
    /// <inheritdoc cref="Read"/>
    /// <param name="path">The file.</param>
    /// <param name="largest">The most bytes that it may have.</param>
    /// <param name="followLinks">For files that a person names on the command line.</param>
    /// <param name="patience">How long one answer of a share is waited for; null = a disk of this machine.</param>
    public static OpenedFile Open(string path, long largest, bool followLinks = false, TimeSpan? patience = null) =>
        patience is { } most ? Patient.Call(() => OpenNow(path, largest, followLinks, most), most) : OpenNow(path, largest, followLinks, null);

    private static OpenedFile OpenNow(string path, long largest, bool followLinks, TimeSpan? patience)
    {
        try
        {
            if (!followLinks && !Posix.Available && new FileInfo(path).LinkTarget is not null)
            {
                return Trouble(FileTrouble.Link, LinkText);
            }

            var handle = Posix.Available && !followLinks
                ? Posix.OpenWithoutFollowing(path)
                : File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            return Opened(handle, largest, patience);
        }
        catch (Exception error) when (error is FileNotFoundException or DirectoryNotFoundException)
        {
            return Trouble(FileTrouble.Vanished, "There is no such file.");
        }
        catch (UnauthorizedAccessException)
        {
            return Trouble(FileTrouble.Denied, "There is no right to read it (or it is a folder).");
        }
        catch (IOException error) when (Posix.IsLink(error))
        {
            return Trouble(FileTrouble.Link, LinkText);
        }
        catch (IOException error) when (Posix.IsNoFile(error))
        {
            return Trouble(FileTrouble.NotRegular, "It is not a regular file.");
        }
    }

    private static OpenedFile Opened(SafeFileHandle handle, long largest, TimeSpan? patience)
    {
        var keep = false;
        try
        {
            // Tells a folder by throwing, and a pipe or a device by its answer; it is not the one that closes the handle.
#pragma warning disable CA2000
            var probe = new FileStream(handle, FileAccess.Read, bufferSize: 0);
#pragma warning restore CA2000
            if (!probe.CanSeek)
            {
                return Trouble(FileTrouble.NotRegular, "It is not a regular file.");
            }

            var length = RandomAccess.GetLength(handle);
            if (length > largest)
            {
                return Trouble(FileTrouble.TooLarge, FormattableString.Invariant(
                    $"It is {length / 1e6:0} MB; the most that is taken is {largest / 1e6:0} MB. Split it, or raise LargestFileMegabytes in appsettings.json."));
            }

            keep = true;
            return new(new IncomingFile(handle, patience), FileTrouble.None, "");
        }
        finally
        {
            if (!keep)
            {
                handle.Dispose();
            }
        }
    }

    private static OpenedFile Trouble(FileTrouble trouble, string why) => new(null, trouble, why);
}
