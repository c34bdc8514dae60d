namespace DailyAdjust.Service.Sites;

/// <summary>Bytes in memory that tell how far they were read.</summary>
/// <param name="bytes">All of them.</param>
/// <param name="read">Takes the share read, 0 to 1; null = nobody watches.</param>
internal sealed class WatchedBytes(byte[] bytes, Action<double>? read) : MemoryStream(bytes, writable: false)
{
    // The overload for spans comes through here too.
    public override int Read(byte[] buffer, int offset, int count)
    {
        var length = base.Read(buffer, offset, count);
        read?.Invoke((double)Position / Math.Max(Length, 1));
        return length;
    }
}
