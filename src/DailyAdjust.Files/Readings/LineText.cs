namespace DailyAdjust.Files.Readings;

/// <summary>Hands lines to the CSV parser: one line, one row. A line with a fault is reported and handed on empty, so that rows keep count of lines.</summary>
internal sealed class LineText(LineReader lines, Action<int, LineFault> report) : TextReader
{
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

        next.CopyTo(_line);
        _line[next.Length] = '\n';
        (_position, _length) = (0, next.Length + 1);
        return true;
    }
}
