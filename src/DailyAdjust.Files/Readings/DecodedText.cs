using System.Text;
using System.Text.Unicode;

namespace DailyAdjust.Files.Readings;

/// <summary>
/// A file's bytes as characters, a piece at a time: UTF-8, UTF-16 with a byte order mark, or else Latin-1 (stations write
/// their degree sign so). Bytes that are no character become U+FFFD, which no number contains.
/// </summary>
internal sealed class DecodedText
{
    private const int PieceBytes = 64 * 1024;

    private readonly Stream stream;
    private readonly Decoder decoder;
    private readonly byte[] bytes = new byte[PieceBytes];
    private int position;
    private int count;
    private bool ended;
    private bool flushed;

    public DecodedText(Stream stream)
    {
        this.stream = stream;
        Refill();
        var (encoding, markLength) = EncodingOf(bytes.AsSpan(0, count), ended);
        position = markLength;
        decoder = encoding.GetDecoder();
        NotText = WhyNotText(bytes.AsSpan(0, count));
    }

    /// <summary>Why the file cannot be read as text; null where it can.</summary>
    public string? NotText { get; }

    /// <summary>Fills some of the characters; 0 = the end.</summary>
    public int Read(Span<char> characters)
    {
        while (!flushed)
        {
            if (position == count && !ended)
            {
                Refill();
            }

            flushed = ended && position == count;
            decoder.Convert(bytes.AsSpan(position, count - position), characters, flushed, out var bytesUsed, out var written, out _);
            position += bytesUsed;
            if (written > 0)
            {
                return written;
            }
        }

        return 0;
    }

    private void Refill()
    {
        position = 0;
        count = stream.ReadAtLeast(bytes, PieceBytes, throwOnEndOfStream: false);
        ended = count < PieceBytes;
    }

    private static (Encoding Encoding, int MarkLength) EncodingOf(ReadOnlySpan<byte> start, bool whole) => start switch
    {
        [0xEF, 0xBB, 0xBF, ..] => (Encoding.UTF8, 3),
        [0xFF, 0xFE, ..] => (Encoding.Unicode, 2),
        [0xFE, 0xFF, ..] => (Encoding.BigEndianUnicode, 2),
        _ => (IsUtf8(start, whole) ? Encoding.UTF8 : Encoding.Latin1, 0),
    };

    /// <summary>The last character of a piece may be cut: up to three bytes are left out of the judgement.</summary>
    private static bool IsUtf8(ReadOnlySpan<byte> start, bool whole)
    {
        for (var left = 0; left <= (whole ? 0 : 3); left++)
        {
            if (Utf8.IsValid(start[..^left]))
            {
                return true;
            }
        }

        return false;
    }

    private static string? WhyNotText(ReadOnlySpan<byte> start) => start switch
    {
        [] => "the file is empty",
        [0x1F, 0x8B, ..] or [(byte)'P', (byte)'K', 3, 4, ..] => "the file is compressed",
        _ => null,
    };
}
