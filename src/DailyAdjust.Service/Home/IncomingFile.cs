using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>A file that is being taken in: its bytes, to be read as often and by as many readers as needed, never all at once in memory.</summary>
/// <param name="handle">Open to read, of a regular file; closed by <see cref="Dispose"/>.</param>
/// <param name="patience">How long one answer of a share is waited for; null = a disk of this machine.</param>
public sealed class IncomingFile(SafeFileHandle handle, TimeSpan? patience = null) : IDisposable
{
    private readonly DateTime _modified = File.GetLastWriteTimeUtc(handle);

    public long Length { get; } = RandomAccess.GetLength(handle);

    /// <summary>As it stood when it was opened.</summary>
    public FileState Stood => new(Length, _modified);

    /// <summary>Another program holds it locked for itself: it has more to write.</summary>
    public bool IsLocked => Posix.IsLocked(handle);

    /// <summary>Nobody wrote to it since it was opened.</summary>
    /// <exception cref="IOException">The share does not answer.</exception>
    public bool IsUnchanged => patience is { } most ? Patient.Call(StandsAsItDid, most) : StandsAsItDid();

    /// <summary>A reader of its own, from the first byte on, seekable.</summary>
    /// <param name="read">Takes the share read, 0 to 1; null = nobody watches.</param>
    public Stream Open(Action<double>? read = null) => new IncomingStream(handle, Length, read, patience);

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

    private bool StandsAsItDid() => RandomAccess.GetLength(handle) == Length && File.GetLastWriteTimeUtc(handle) == _modified;
}
