namespace DailyAdjust.Files.Formats;

/// <summary>
/// What comes out of a compressed file, watched: more of it than any weather file has, or than text can be compressed to, is no weather file,
/// and what does not fit its check sum is damaged.
/// </summary>
/// <param name="expanded">The bytes after expansion.</param>
/// <param name="packedBytes">How many there were before.</param>
/// <param name="expected">Check sum and length that the file names.</param>
internal sealed class ExpandedStream(Stream expanded, long packedBytes, (uint Crc, long Length) expected) : Stream
{
    /// <summary>Ten years of minutes are about 0.4 GB.</summary>
    public const long MostBytes = 2_000_000_000;

    /// <summary>Tables of numbers are compressed to a tenth; the most that the method can do is about a thousandth.</summary>
    public const int MostRatio = 200;

    /// <summary>Below this the ratio proves nothing: a short file may be all blanks.</summary>
    public const long AlwaysBytes = 20_000_000;

    private static readonly uint[] Table = MakeTable();

    private uint _crc = uint.MaxValue;
    private long _read;

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    /// <exception cref="UnpackException">The file is damaged, or too large.</exception>
    public override int Read(Span<byte> buffer)
    {
        var count = ReadExpanded(buffer);
        _read += count;
        if (_read > MostBytes || (_read > AlwaysBytes && _read / MostRatio > packedBytes))
        {
            throw new UnpackException(FormattableString.Invariant($"it expands to more than {_read / 1_000_000} MB, which no weather file does"));
        }

        foreach (var value in buffer[..count])
        {
            _crc = Table[(byte)(_crc ^ value)] ^ (_crc >> 8);
        }

        // A file that was cut ends early, and says nothing else of it.
        return count > 0 || buffer.Length == 0 || (expected.Crc == ~_crc && expected.Length == _read)
            ? count
            : throw new UnpackException("its contents do not fit its check sum: it is cut or damaged, or several compressed files were joined");
    }

    private int ReadExpanded(Span<byte> buffer)
    {
        try
        {
            return expanded.Read(buffer);
        }
        catch (Exception e) when (e is InvalidDataException or EndOfStreamException)
        {
            throw new UnpackException("it is damaged", e);
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            expanded.Dispose();
        }

        base.Dispose(disposing);
    }

    /// <summary>CRC-32 of zip archives, polynomial 0xEDB88320.</summary>
    private static uint[] MakeTable()
    {
        var table = new uint[256];
        for (var i = 0u; i < table.Length; i++)
        {
            var value = i;
            for (var bit = 0; bit < 8; bit++)
            {
                value = (value & 1) != 0 ? 0xEDB88320 ^ (value >> 1) : value >> 1;
            }

            table[i] = value;
        }

        return table;
    }
}
