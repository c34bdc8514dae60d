using System.Security.Cryptography;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>The SHA-256 of a stream and of its first bytes up to given marks, in one pass and bounded memory.</summary>
internal sealed record FileHashes(string Whole, long Length, IReadOnlyDictionary<long, string> AtMarks)
{
    private const int BufferSize = 1 << 18;

    /// <param name="content">Read from its beginning to its end.</param>
    /// <param name="marks">Lengths above 0, in any order; those beyond the end are left out of the result.</param>
    public static FileHashes Of(Stream content, IEnumerable<long> marks)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var ahead = new Queue<long>(marks.Distinct().Order());
        var found = new Dictionary<long, string>();
        var buffer = new byte[BufferSize];
        var at = 0L;
        content.Position = 0;
        while (true)
        {
            var most = ahead.TryPeek(out var mark) ? (int)Math.Min(BufferSize, mark - at) : BufferSize;
            var count = content.Read(buffer, 0, most);
            if (count == 0)
            {
                return new FileHashes(Convert.ToHexStringLower(hash.GetCurrentHash()), at, found);
            }

            hash.AppendData(buffer, 0, count);
            at += count;
            if (at == mark)
            {
                found[at] = Convert.ToHexStringLower(hash.GetCurrentHash());
                ahead.Dequeue();
            }
        }
    }
}
