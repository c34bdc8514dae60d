using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>A file that is being taken in: its bytes, to be read as often and by as many readers as needed, never all at once in memory.</summary>
/// <param name="handle">Open to read, of a regular file; closed by <see cref="Dispose"/>.</param>
public sealed class IncomingFile(SafeFileHandle handle) : IDisposable
{
    private readonly DateTime _modified = File.GetLastWriteTimeUtc(handle);

    public long Length { get; } = RandomAccess.GetLength(handle);

    /// <summary>Nobody wrote to it since it was opened.</summary>
    public bool IsUnchanged => RandomAccess.GetLength(handle) == Length && File.GetLastWriteTimeUtc(handle) == _modified;

    /// <summary>A reader of its own, from the first byte on, seekable.</summary>
    /// <param name="read">Takes the share read, 0 to 1; null = nobody watches.</param>
    public Stream Open(Action<double>? read = null) => new IncomingStream(handle, Length, read);

    /// <summary>All of it, for small files.</summary>
    /// <exception cref="IOException">It became shorter.</exception>
    public byte[] ReadAll() => Head(Length);

    /// <summary>Its beginning.</summary>
    public byte[] Head(long most)
    {
        using var stream = Open();
        var head = new byte[Math.Min(most, Length)];
        stream.ReadExactly(head);
        return head;
    }

    public void Dispose() => handle.Dispose();
}
