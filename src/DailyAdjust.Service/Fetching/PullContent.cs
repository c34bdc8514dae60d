using System.Buffers.Binary;
using System.IO.Compression;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Rounds;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Fetching;

/// <summary>Whether an answer can be a weather file at all; what is in it, its reader judges.</summary>
internal static class PullContent
{
    private const int BlockSize = 1 << 16;

    /// <summary>Enough to tell a web page or a header.</summary>
    private const int HeadLength = 4096;

    /// <exception cref="PullException">A web page: most often a notice or a sign-in.</exception>
    public static void CheckType(string? mediaType)
    {
        if (mediaType is not null && (mediaType.Equals("text/html", StringComparison.OrdinalIgnoreCase) || mediaType.Equals("application/xhtml+xml", StringComparison.OrdinalIgnoreCase)))
        {
            throw WebPage();
        }
    }

    /// <summary>Reads to the end; a stream that gives more than the largest is left.</summary>
    /// <exception cref="PullException">Too large.</exception>
    public static async Task<byte[]> ReadAsync(Stream stream, long largest, CancellationToken stop)
    {
        using var whole = new MemoryStream();
        var block = new byte[BlockSize];
        while (await stream.ReadAsync(block, stop).ConfigureAwait(false) is var count && count > 0)
        {
            if (whole.Length + count > largest)
            {
                throw TooLarge(largest);
            }

            whole.Write(block, 0, count);
        }

        return whole.ToArray();
    }

    /// <summary>
    /// Unpacks an answer of Content-Encoding gzip. The unpacker takes the end of its input for the end of the file, so the length that
    /// the packer wrote last (RFC 1952 section 2.3.1, ISIZE) is held against what came out.
    /// </summary>
    /// <exception cref="PullException">Too large, damaged, or cut.</exception>
    public static async Task<byte[]> UnpackAsync(byte[] packed, long largest, CancellationToken stop)
    {
        var gzip = new GZipStream(new MemoryStream(packed, writable: false), CompressionMode.Decompress);
        await using (gzip.ConfigureAwait(false))
        {
            var bytes = await ReadAsync(gzip, largest, stop).ConfigureAwait(false);
            return packed.Length >= sizeof(uint) && BinaryPrimitives.ReadUInt32LittleEndian(packed.AsSpan(packed.Length - sizeof(uint))) == (uint)bytes.Length
                ? bytes
                : throw new PullException("the packed answer is damaged, was cut off, or is several joined ones", passing: true);
        }
    }

    /// <exception cref="PullException">Empty, a web page, or a file that only people may bring.</exception>
    public static void Check(byte[] bytes)
    {
        var head = DescriptionFiles.Decode(bytes.AsSpan(0, Math.Min(bytes.Length, HeadLength)).ToArray());
        var begin = head.TrimStart('\uFEFF', ' ', '\t', '\r', '\n', '\0');
        if (begin.Length == 0)
        {
            throw new PullException("the server sends an empty file", passing: true);
        }

        if (begin.StartsWith("<!doctype", StringComparison.OrdinalIgnoreCase) || begin.StartsWith("<html", StringComparison.OrdinalIgnoreCase))
        {
            throw WebPage();
        }

        // What people did is never taken from a server: it would turn the advice without anybody's knowledge.
        if (LogbookReader.Recognises(head) || RoundSheetReader.Recognises(head))
        {
            throw new PullException("the server sends a logbook or a round sheet instead of weather", passing: false);
        }
    }

    public static PullException TooLarge(long largest) =>
        new(FormattableString.Invariant($"the file is larger than {largest / 1e6:0.###} MB, the most that its pull allows (largest)"), passing: false);

    private static PullException WebPage() => new("the server sends a web page instead of data", passing: true);
}
