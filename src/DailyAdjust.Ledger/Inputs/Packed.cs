using System.IO.Compression;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>Brotli over a piece of bounded size.</summary>
internal static class Packed
{
    // On station files quality 5 packs about as well as 9 in a third of the time.
    private const int Quality = 5;
    private const int WindowBits = 22;

    public static byte[] Pack(ReadOnlySpan<byte> bytes)
    {
        var packed = new byte[BrotliEncoder.GetMaxCompressedLength(bytes.Length)];
        if (!BrotliEncoder.TryCompress(bytes, packed, out var written, Quality, WindowBits))
        {
            throw new InvalidOperationException("Brotli needs more than its own largest size.");
        }

        return packed[..written];
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
