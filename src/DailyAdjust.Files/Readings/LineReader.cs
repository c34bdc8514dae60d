using System.Text;

namespace DailyAdjust.Files.Readings;

/// <summary>Why a line cannot be split into cells.</summary>
internal enum LineFault
{
    None,
    TooLong,
    OpenQuote,
    NotText,
}

/// <summary>
/// Lines of a text, ended by LF, CRLF or CR. A fault costs one line: a quote that is not closed does not swallow
/// the rows below it, and a line without end does not fill the memory.
/// </summary>
internal sealed class LineReader(DecodedText text)
{
    public const int LongestLine = 64 * 1024;

    private readonly char[] _buffer = new char[2 * LongestLine];
    private int _start;
    private int _end;
    private bool _ended;
    private bool _afterReturn;

    /// <summary>The number of the line last read, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>What is wrong with the line last read.</summary>
    public LineFault Fault { get; private set; }

    /// <summary>The last line, where nothing ends it: it may have been cut. 0 = not known yet, or there is none.</summary>
    public int OpenLine { get; private set; }

    /// <summary>The next line without its end; empty where it has a fault. Valid until the next call.</summary>
    public bool TryRead(out ReadOnlySpan<char> line)
    {
        var tooLong = false;
        var searched = 0;
        while (true)
        {
            if (_afterReturn && _start < _end)
            {
                _start += _buffer[_start] == '\n' ? 1 : 0;
                _afterReturn = false;
            }

            var found = _buffer.AsSpan(_start + searched, _end - _start - searched).IndexOfAny('\r', '\n');
            if (found >= 0)
            {
                line = _buffer.AsSpan(_start, searched + found);
                _afterReturn = _buffer[_start + searched + found] == '\r';
                _start += searched + found + 1;
                return Take(ref line, tooLong);
            }

            searched = _end - _start;
            if (searched > LongestLine)
            {
                (tooLong, _start, searched) = (true, _end, 0);
            }

            if (!_ended)
            {
                Refill();
                continue;
            }

            line = _buffer.AsSpan(_start, _end - _start);
            _start = _end;
            if (line.IsEmpty && !tooLong)
            {
                return false;
            }

            OpenLine = Number + 1;
            return Take(ref line, tooLong);
        }
    }

    /// <summary>Whether the line after the last read one ends with the same character; true where nothing is known of it.</summary>
    public bool NextEndsLike(ReadOnlySpan<char> line)
    {
        var rest = _buffer.AsSpan(_start, _end - _start).TrimStart("\r\n");
        var end = rest.IndexOfAny('\r', '\n');
        var next = end >= 0 ? rest[..end] : _ended ? rest : [];
        return next.IsEmpty ? !_ended : line.Length > 0 && next[^1] == line[^1];
    }

    /// <summary>Passes over lines that were read before; what was read ahead is dropped.</summary>
    /// <returns>The number of the first line that is not wholly within the known bytes; null = nothing is passed over.</returns>
    public int? SkipTo(LinesKnown from)
    {
        if (text.SkipTo(from) is not { } lines)
        {
            return null;
        }

        (_start, _end, _ended, _afterReturn) = (0, 0, false, false);
        Number = lines.Skipped;
        return lines.Known + 1;
    }

    /// <summary>All that was not read yet, as one text, for formats that have no lines; null where it is longer than allowed.</summary>
    /// <param name="most">Characters.</param>
    public string? Rest(int most)
    {
        var rest = new StringBuilder().Append(_buffer, _start, _end - _start);
        (_start, _end) = (0, 0);
        while (!_ended && rest.Length <= most)
        {
            Refill();
            rest.Append(_buffer, 0, _end);
            (_start, _end) = (0, 0);
        }

        return rest.Length <= most ? rest.ToString() : null;
    }

    private bool Take(ref ReadOnlySpan<char> line, bool tooLong)
    {
        Number++;
        Fault = tooLong || line.Length > LongestLine ? LineFault.TooLong
            : HoldsControls(line) ? LineFault.NotText
            : int.IsOddInteger(line.Count('"')) ? LineFault.OpenQuote
            : LineFault.None;
        line = Fault != LineFault.None ? [] : line is ['\uFEFF', ..] ? line[1..] : line;
        return true;
    }

    /// <summary>Anything below a blank but tabs; U+001A is what old systems end a file with.</summary>
    private static bool HoldsControls(ReadOnlySpan<char> line)
    {
        foreach (var c in line.Trim('\u001A'))
        {
            if (c < ' ' && c != '\t')
            {
                return true;
            }
        }

        return false;
    }

    private void Refill()
    {
        _buffer.AsSpan(_start, _end - _start).CopyTo(_buffer);
        (_start, _end) = (0, _end - _start);
        var read = text.Read(_buffer.AsSpan(_end));
        _end += read;
        _ended = read == 0;
    }
}
