namespace DailyAdjust.Files.Readings;

/// <summary>Hands lines to the CSV parser: one line, one row. A line with a fault is reported and handed on empty, so that rows keep count of lines.</summary>
internal sealed class LineText(LineReader lines, Action<int, LineFault> report) : TextReader
{
    private readonly char[] line = new char[LineReader.LongestLine + 1];
    private int position;
    private int length;

    public override int Read(char[] buffer, int index, int count) => Read(buffer.AsSpan(index, count));

    public override int Read(Span<char> buffer)
    {
        var written = 0;
        while (written < buffer.Length && (position < length || Advance()))
        {
            var part = line.AsSpan(position, Math.Min(length - position, buffer.Length - written));
            part.CopyTo(buffer[written..]);
            position += part.Length;
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

        next.CopyTo(line);
        line[next.Length] = '\n';
        (position, length) = (0, next.Length + 1);
        return true;
    }
}
