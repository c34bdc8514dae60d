using System.Buffers;
using System.IO.Compression;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>Brotli over a piece of bounded size.</summary>
internal static class Packed
{
    // On station files quality 2 packs into 1.13 times the bytes of quality 5, in half of its time.
    private const int Quality = 2;
    private const int WindowBits = 22;

    public static byte[] Pack(ReadOnlySpan<byte> bytes)
    {
        var packed = ArrayPool<byte>.Shared.Rent(BrotliEncoder.GetMaxCompressedLength(bytes.Length));
        try
        {
            return BrotliEncoder.TryCompress(bytes, packed, out var written, Quality, WindowBits)
                ? packed[..written]
                : throw new InvalidOperationException("Brotli needs more than its own largest size.");
        }
        finally
        {
            ArrayPool<byte>.Shared.Return(packed);
        }
    }

    /// <exception cref="InvalidDataException">The bytes are not what was packed.</exception>
    public static byte[] Unpack(ReadOnlySpan<byte> packed, int length)
    {
        var bytes = new byte[length];
        return BrotliDecoder.TryDecompress(packed, bytes, out var written) && written == length
            ? bytes
            : throw new InvalidDataException("A stored piece does not unpack to its length.");
    }
}
