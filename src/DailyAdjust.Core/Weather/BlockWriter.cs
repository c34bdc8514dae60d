using System.Buffers;
using System.Buffers.Binary;
using System.Numerics;

namespace DailyAdjust.Core.Weather;

/// <summary>Bytes of a block of readings, one after another.</summary>
/// <param name="expected">About how many there will be.</param>
internal sealed class BlockWriter(int expected) : IDisposable
{
    private const int LongestNumber = 10;

    private byte[] _bytes = ArrayPool<byte>.Shared.Rent(Math.Max(64, expected));
    private int _count;

    public byte[] ToArray() => _bytes.AsSpan(0, _count).ToArray();

    public void Dispose() => ArrayPool<byte>.Shared.Return(_bytes);

    public void Add(byte value)
    {
        Need(1);
        _bytes[_count++] = value;
    }

    public void Add(ReadOnlySpan<byte> values)
    {
        Need(values.Length);
        values.CopyTo(_bytes.AsSpan(_count));
        _count += values.Length;
    }

    /// <summary>7-bit groups, the lowest first; the sign is folded into the lowest bit.</summary>
    public void AddSigned(long value) => AddUnsigned((ulong)((value << 1) ^ (value >> 63)));

    /// <summary>7-bit groups, the lowest first.</summary>
    public void AddUnsigned(ulong value)
    {
        Need(LongestNumber);
        while (value >= 0x80)
        {
            _bytes[_count++] = (byte)(value | 0x80);
            value >>= 7;
        }

        _bytes[_count++] = (byte)value;
    }

    /// <summary>Each value's 64 bits combined with those before by exclusive or, without the zero bytes at their ends.</summary>
    public void AddColumn(ReadOnlySpan<double> column)
    {
        Need(9 * column.Length);
        Span<byte> change = stackalloc byte[8];
        var at = _count;
        var before = 0UL;
        foreach (var value in column)
        {
            var bits = BitConverter.DoubleToUInt64Bits(value);
            var difference = bits ^ before;
            before = bits;
            var leading = BitOperations.LeadingZeroCount(difference) / 8;
            var trailing = difference == 0 ? 0 : BitOperations.TrailingZeroCount(difference) / 8;
            _bytes[at++] = (byte)((leading << 4) | trailing);
            BinaryPrimitives.WriteUInt64BigEndian(change, difference);
            var kept = change[leading..(8 - trailing)];
            kept.CopyTo(_bytes.AsSpan(at));
            at += kept.Length;
        }

        _count = at;
    }

    private void Need(int more)
    {
        if (_count + more > _bytes.Length)
        {
            var wider = ArrayPool<byte>.Shared.Rent(Math.Max(2 * _bytes.Length, _count + more));
            _bytes.AsSpan(0, _count).CopyTo(wider);
            ArrayPool<byte>.Shared.Return(_bytes);
            _bytes = wider;
        }
    }
}
