using Microsoft.Win32.SafeHandles;

namespace DailyAdjust.Service.Home;

/// <summary>Reads an open file with a place of its own, beside other readers of it; the file stays open.</summary>
/// <param name="handle">The file.</param>
/// <param name="length">Bytes that count.</param>
/// <param name="read">Takes the part read, 0 to 1; null = nobody watches.</param>
/// <param name="patience">How long one answer of a share is waited for; null = a disk of this machine.</param>
internal sealed class IncomingStream(SafeFileHandle handle, long length, Action<double>? read, TimeSpan? patience) : Stream
{
    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var most = (int)Math.Min(buffer.Length, Math.Max(0, length - Position));
        var count = most == 0 ? 0 : patience is { } wait ? ReadPatiently(buffer[..most], wait) : RandomAccess.Read(handle, buffer[..most], Position);
        Position += count;
        read?.Invoke((double)Position / Math.Max(length, 1));
        return count;
    }

    private int ReadPatiently(Span<byte> buffer, TimeSpan wait)
    {
        // A block of its own: a read that answers too late must not write where somebody else reads by then.
        var (block, at) = (new byte[buffer.Length], Position);
        var count = Patient.Call(() => RandomAccess.Read(handle, block, at), wait);
        block.AsSpan(0, count).CopyTo(buffer);
        return count;
    }

    public override long Seek(long offset, SeekOrigin origin) => Position = origin switch
    {
        SeekOrigin.Begin => offset,
        SeekOrigin.Current => Position + offset,
        _ => length + offset,
    };

    public override void Flush()
    {
        // Nothing is written.
    }

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
}
