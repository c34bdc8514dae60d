using System.Text;

namespace DailyAdjust.Files.Readings;

/// <summary>
/// Counts the line ends (LF, CRLF, CR) of a stream's bytes, forward only, without decoding them, and looks out for a word on the way.
/// </summary>
internal sealed class LineEnds
{
    private const int PieceBytes = 64 * 1024;

    private readonly Stream _stream;
    private readonly byte[] _word;
    private readonly byte[] _bytes = new byte[PieceBytes];
    private readonly byte[] _lower;
    private long _at;
    private int _kept;
    private bool _afterReturn;

    /// <param name="stream">Seekable.</param>
    /// <param name="from">Where counting begins.</param>
    /// <param name="word">ASCII; upper and lower case make no difference.</param>
    public LineEnds(Stream stream, long from, string word)
    {
        _stream = stream;
        _stream.Position = _at = from;
        _word = Encoding.ASCII.GetBytes(word.ToLowerInvariant());
        _lower = new byte[PieceBytes + _word.Length];
    }

    /// <summary>The word was met.</summary>
    public bool HasWord { get; private set; }

    /// <summary>Line ends from where it stands up to a byte; CRLF is one, and belongs to where its CR is.</summary>
    public int Through(long end)
    {
        var ends = 0;
        while (_at < end)
        {
            var piece = _bytes.AsSpan(0, _stream.Read(_bytes, 0, (int)Math.Min(PieceBytes, end - _at)));
            if (piece.IsEmpty)
            {
                break;
            }

            ends += piece.Count((byte)'\n') + piece.Count((byte)'\r') - piece.Count("\r\n"u8) - (_afterReturn && piece[0] == '\n' ? 1 : 0);
            _afterReturn = piece[^1] == '\r';
            _at += piece.Length;
            Look(piece);
        }

        return ends;
    }

    /// <summary>Goes past the next line end; the byte at which the line after it begins, or null where none follows.</summary>
    public long? ToNextLine()
    {
        while (true)
        {
            var count = _stream.Read(_bytes, 0, PieceBytes);
            var piece = _bytes.AsSpan(0, count);
            if (piece.IsEmpty)
            {
                return null;
            }

            var found = piece.IndexOfAny((byte)'\r', (byte)'\n');
            if (found < 0)
            {
                (_at, _afterReturn) = (_at + count, false);
                Look(piece);
                continue;
            }

            // A LF right after a CR that was counted before is no line end of its own.
            if (found == 0 && piece[0] == '\n' && _afterReturn)
            {
                Move(piece[..1]);
                continue;
            }

            var isPair = piece[found] == '\r' && found + 1 < count && piece[found + 1] == '\n';
            Move(piece[..(found + (isPair ? 2 : 1))]);
            return _at;
        }
    }

    private void Move(ReadOnlySpan<byte> passed)
    {
        _at += passed.Length;
        _afterReturn = passed[^1] == '\r';
        _stream.Position = _at;
        Look(passed);
    }

    /// <summary>The end of the piece before is kept: the word may lie across.</summary>
    private void Look(ReadOnlySpan<byte> piece)
    {
        Ascii.ToLower(piece, _lower.AsSpan(_kept), out var written);
        if (written < piece.Length)
        {
            // Bytes above 127: they belong to no word of ASCII, and what they are in lower case is not asked.
            for (var i = written; i < piece.Length; i++)
            {
                _lower[_kept + i] = piece[i] is >= (byte)'A' and <= (byte)'Z' ? (byte)(piece[i] | 0x20) : piece[i];
            }
        }

        var seen = _lower.AsSpan(0, _kept + piece.Length);
        HasWord |= seen.IndexOf(_word) >= 0;
        _kept = Math.Min(seen.Length, _word.Length - 1);
        seen[^_kept..].CopyTo(_lower);
    }
}
