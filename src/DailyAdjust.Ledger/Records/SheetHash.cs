using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace DailyAdjust.Ledger.Records;

/// <summary>One hash over a sheet's advice and its report files.</summary>
internal static class SheetHash
{
    public static string Of(string lines, IReadOnlyList<KeyValuePair<string, byte[]>> filesInOrder)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, Encoding.UTF8.GetBytes(lines));
        foreach (var (name, bytes) in filesInOrder)
        {
            Append(hash, Encoding.UTF8.GetBytes(name));
            Append(hash, bytes);
        }

        return Convert.ToHexStringLower(hash.GetCurrentHash());
    }

    // With its length in front, so that no two different sheets run together into the same bytes.
    private static void Append(IncrementalHash hash, byte[] part)
    {
        Span<byte> length = stackalloc byte[sizeof(long)];
        BinaryPrimitives.WriteInt64LittleEndian(length, part.LongLength);
        hash.AppendData(length);
        hash.AppendData(part);
    }
}
