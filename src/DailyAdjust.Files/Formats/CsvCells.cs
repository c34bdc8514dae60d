namespace DailyAdjust.Files.Formats;

/// <summary>
/// The cells of one line, with their quotes taken off. A quote stands at the beginning of a cell or not at all, and what it opens ends the cell:
/// a line that is quoted otherwise is damaged.
/// </summary>
internal sealed class CsvCells(char delimiter)
{
    private readonly List<Range> _cells = [];
    private char[] _text = new char[256];

    public int Count => _cells.Count;

    /// <summary>A cell without blanks at its ends.</summary>
    public ReadOnlySpan<char> this[Index index] => _text.AsSpan(_cells[index.GetOffset(Count)]).Trim();

    /// <summary>Takes a line's cells; false = it is quoted wrongly.</summary>
    public bool TrySplit(ReadOnlySpan<char> line)
    {
        _cells.Clear();
        if (_text.Length < line.Length)
        {
            _text = new char[2 * line.Length];
        }

        var end = 0;
        var rest = line;
        while (true)
        {
            var start = end;
            var isQuoted = rest.TrimStart(' ') is ['"', ..];
            var used = isQuoted ? Quoted(rest, ref end) : Plain(rest, ref end);
            if (used < 0)
            {
                return false;
            }

            _cells.Add(start..end);
            if (used == rest.Length)
            {
                return true;
            }

            rest = rest[(used + 1)..];
        }
    }

    public string[] ToArray()
    {
        var cells = new string[Count];
        for (var i = 0; i < cells.Length; i++)
        {
            cells[i] = this[i].ToString();
        }

        return cells;
    }

    private int Plain(ReadOnlySpan<char> rest, ref int end)
    {
        var length = rest.IndexOf(delimiter) is >= 0 and var at ? at : rest.Length;
        if (rest[..length].Contains('"'))
        {
            return -1;
        }

        rest[..length].CopyTo(_text.AsSpan(end));
        end += length;
        return length;
    }

    private int Quoted(ReadOnlySpan<char> rest, ref int end)
    {
        for (var i = rest.IndexOf('"') + 1; i < rest.Length; i++)
        {
            if (rest[i] == '"' && (i + 1 == rest.Length || rest[i + 1] != '"'))
            {
                while (++i < rest.Length && rest[i] == ' ')
                {
                }

                return i == rest.Length || rest[i] == delimiter ? i : -1;
            }

            i += rest[i] == '"' ? 1 : 0;
            _text[end++] = rest[i];
        }

        return -1;
    }
}
