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

    private readonly char[] buffer = new char[2 * LongestLine];
    private int start;
    private int end;
    private bool ended;
    private bool afterReturn;

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
            if (afterReturn && start < end)
            {
                start += buffer[start] == '\n' ? 1 : 0;
                afterReturn = false;
            }

            var found = buffer.AsSpan(start + searched, end - start - searched).IndexOfAny('\r', '\n');
            if (found >= 0)
            {
                line = buffer.AsSpan(start, searched + found);
                afterReturn = buffer[start + searched + found] == '\r';
                start += searched + found + 1;
                return Take(ref line, tooLong);
            }

            searched = end - start;
            if (searched > LongestLine)
            {
                (tooLong, start, searched) = (true, end, 0);
            }

            if (!ended)
            {
                Refill();
                continue;
            }

            line = buffer.AsSpan(start, end - start);
            start = end;
            if (line.IsEmpty && !tooLong)
            {
                return false;
            }

            OpenLine = Number + 1;
            return Take(ref line, tooLong);
        }
    }

    private bool Take(ref ReadOnlySpan<char> line, bool tooLong)
    {
        Number++;
        Fault = tooLong || line.Length > LongestLine ? LineFault.TooLong
            : line.Contains('\0') ? LineFault.NotText
            : int.IsOddInteger(line.Count('"')) ? LineFault.OpenQuote
            : LineFault.None;
        line = Fault != LineFault.None ? [] : line is ['\uFEFF', ..] ? line[1..] : line;
        return true;
    }

    private void Refill()
    {
        buffer.AsSpan(start, end - start).CopyTo(buffer);
        (start, end) = (0, end - start);
        var read = text.Read(buffer.AsSpan(end));
        end += read;
        ended = read == 0;
    }
}
