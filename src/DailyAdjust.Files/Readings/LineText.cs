namespace DailyAdjust.Files.Readings;

/// <summary>Hands lines to the CSV parser: one line, one row. A line with a fault is reported and handed on empty, so that rows keep count of lines.</summary>
/// <param name="lines">The lines.</param>
/// <param name="delimiter">Where it is a blank, runs of blanks and tabs are one, and those at the line's ends none.</param>
/// <param name="report">Takes the lines that have a fault.</param>
internal sealed class LineText(LineReader lines, char delimiter, Action<int, LineFault> report) : TextReader
{
    private const char Blank = ' ';

    private readonly char[] _line = new char[LineReader.LongestLine + 1];
    private int _position;
    private int _length;

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        var written = 0;
        while (written < buffer.Length && (_position < _length || Advance()))
        {
            var part = _line.AsSpan(_position, Math.Min(_length - _position, buffer.Length - written));
            part.CopyTo(buffer[written..]);
            _position += part.Length;
            written += part.Length;
        }

        return written;
    }

    private bool Advance()
    {
        if (!lines.TryRead(out var next))
        {
            return false;
        }

        if (lines.Fault != LineFault.None)
        {
            report(lines.Number, lines.Fault);
        }

        var length = delimiter == Blank ? SingleBlanks(next, _line) : Copy(next, _line);
        _line[length] = '\n';
        (_position, _length) = (0, length + 1);
        return true;
    }

    /// <summary>A line of which runs of blanks and tabs are one delimiter.</summary>
    public static string SingleBlanks(string line)
    {
        var single = new char[line.Length];
        return new string(single, 0, SingleBlanks(line, single));
    }

    private static int Copy(ReadOnlySpan<char> line, Span<char> into)
    {
        line.CopyTo(into);
        return line.Length;
    }

    private static int SingleBlanks(ReadOnlySpan<char> line, Span<char> into)
    {
        var length = 0;
        var quoted = false;
        foreach (var c in line.Trim(" \t"))
        {
            quoted ^= c == '"';
            var isBlank = !quoted && c is Blank or '\t';
            if (!isBlank)
            {
                into[length++] = c;
            }
            else if (into[length - 1] != Blank)
            {
                into[length++] = Blank;
            }
        }

        return length;
    }
}
