namespace DailyAdjust.Service.Home;

/// <summary>Reads bytes from wherever they lie, with a place of its own.</summary>
/// <param name="readAt">Fills a buffer from a place; how many it filled.</param>
/// <param name="length">Bytes there are.</param>
/// <param name="read">Takes the share read, 0 to 1; null = nobody watches.</param>
internal sealed class IncomingStream(IncomingStream.ReadAt readAt, long length, Action<double>? read) : Stream
{
    public delegate int ReadAt(Span<byte> buffer, long at);

    public override bool CanRead => true;

    public override bool CanSeek => true;

    public override bool CanWrite => false;

    public override long Length => length;

    public override long Position { get; set; }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        var most = (int)Math.Min(buffer.Length, Math.Max(0, length - Position));
        var count = most == 0 ? 0 : readAt(buffer[..most], Position);
        Position += count;
        read?.Invoke((double)Position / Math.Max(length, 1));
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
