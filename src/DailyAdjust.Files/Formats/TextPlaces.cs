using System.Text;

namespace DailyAdjust.Files.Formats;

/// <summary>Line and column of a place in a UTF-8 text. Places asked for in ascending order cost one pass over the text.</summary>
internal sealed class TextPlaces(byte[] text)
{
    private int _line = 1;
    private int _lineStart;
    private int _looked;

    /// <summary>Both from 1; the column counts characters.</summary>
    /// <param name="offset">Bytes from the beginning.</param>
    public (int Line, int Column) Of(int offset)
    {
        if (offset < _lineStart)
        {
            (_line, _lineStart, _looked) = (1, 0, 0);
        }

        for (; _looked < offset; _looked++)
        {
            if (text[_looked] == (byte)'\n')
            {
                _line++;
                _lineStart = _looked + 1;
            }
        }

        return (_line, Encoding.UTF8.GetCharCount(text.AsSpan(_lineStart, offset - _lineStart)) + 1);
    }
}
