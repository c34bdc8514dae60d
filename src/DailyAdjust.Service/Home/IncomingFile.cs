using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>A file that is being taken in: its bytes, to be read as often and by as many readers as needed, never all at once in memory.</summary>
public sealed class IncomingFile : IDisposable
{
    private readonly byte[]? _bytes;
    private readonly SafeFileHandle? _handle;
    private readonly DateTime _modified;

    public IncomingFile(byte[] bytes) => (_bytes, Length) = (bytes, bytes.Length);

    /// <param name="handle">Open to read, of a regular file; closed by <see cref="Dispose"/>.</param>
    public IncomingFile(SafeFileHandle handle)
    {
        _handle = handle;
        Length = RandomAccess.GetLength(handle);
        _modified = File.GetLastWriteTimeUtc(handle);
    }

    public long Length { get; }

    /// <summary>A reader of its own, from the first byte on, seekable.</summary>
    /// <param name="read">Takes the share read, 0 to 1; null = nobody watches.</param>
    public Stream Open(Action<double>? read = null) =>
        new IncomingStream(_bytes is { } bytes ? (buffer, at) => Copy(bytes, buffer, at) : (buffer, at) => RandomAccess.Read(_handle!, buffer, at), Length, read);

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

    /// <summary>Nobody wrote to it since it was opened.</summary>
    public bool IsUnchanged => _handle is null || (RandomAccess.GetLength(_handle) == Length && File.GetLastWriteTimeUtc(_handle) == _modified);

    public void Dispose() => _handle?.Dispose();

    private static int Copy(byte[] bytes, Span<byte> buffer, long at)
    {
        var count = (int)Math.Min(buffer.Length, bytes.Length - at);
        bytes.AsSpan((int)at, count).CopyTo(buffer);
        return count;
    }
}
