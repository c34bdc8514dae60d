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

    private readonly Stream _stream;
    private readonly Decoder _decoder;
    private readonly bool _oneByteLineEnds;
    private readonly byte[] _bytes = new byte[PieceBytes];
    private int _position;
    private int _count;
    private bool _ended;
    private bool _flushed;

    public DecodedText(Stream stream)
    {
        _stream = stream;
        Refill();
        var (encoding, markLength) = EncodingOf(_bytes.AsSpan(0, _count), _ended);
        _position = markLength;
        _decoder = encoding.GetDecoder();
        _oneByteLineEnds = encoding is not UnicodeEncoding;
        NotText = WhyNotText(_bytes.AsSpan(0, _count));
    }

    /// <summary>Why the file cannot be read as text; null where it can.</summary>
    public string? NotText { get; }

    /// <summary>Fills some of the characters; 0 = the end.</summary>
    public int Read(Span<char> characters)
    {
        while (!_flushed)
        {
            if (_position == _count && !_ended)
            {
                Refill();
            }

            _flushed = _ended && _position == _count;
            _decoder.Convert(_bytes.AsSpan(_position, _count - _position), characters, _flushed, out var bytesUsed, out var written, out _);
            _position += bytesUsed;
            if (written > 0)
            {
                return written;
            }
        }

        return 0;
    }

    /// <summary>Passes over whole lines of the file's beginning.</summary>
    /// <param name="from">Which lines and bytes have been read, and where to go on.</param>
    /// <returns>Lines that end before the line it goes on from, and lines that end within the known bytes; null = it stays where it is.</returns>
    public (int Skipped, int Known)? SkipTo(LinesKnown from)
    {
        if (!_oneByteLineEnds || !_stream.CanSeek || from.Bytes > _stream.Length || !Ascii.IsValid(from.Header) || from.Header.Length == 0)
        {
            return null;
        }

        // The header's own line holds the word; beyond it, it would be another header, with other columns.
        var position = _stream.Position;
        var header = new LineEnds(_stream, 0, "\0");
        for (var line = 0; line < from.HeaderLine; line++)
        {
            if (header.ToNextLine() is null)
            {
                _stream.Position = position;
                return null;
            }
        }

        var ends = new LineEnds(_stream, _stream.Position, from.Header);
        var skipped = from.HeaderLine + ends.Through(from.GoOnAt) + 1;
        if (ends.ToNextLine() is not { } start || start > from.Bytes || ends.HasWord)
        {
            _stream.Position = position;
            return null;
        }

        var known = skipped + ends.Through(from.Bytes);
        _stream.Position = start;
        _decoder.Reset();
        (_position, _count, _ended, _flushed) = (0, 0, false, false);
        return (skipped, known);
    }

    private void Refill()
    {
        _position = 0;
        _count = _stream.ReadAtLeast(_bytes, PieceBytes, throwOnEndOfStream: false);
        _ended = _count < PieceBytes;
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
