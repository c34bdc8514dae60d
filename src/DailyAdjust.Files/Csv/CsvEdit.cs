namespace DailyAdjust.Files.Csv;

/// <summary>
/// A CSV text whose single cells can be written anew while every other character stays: byte order mark, delimiter, quotation marks, blanks, line ends. Lines are
/// counted as <see cref="CsvRows"/> counts them.
/// </summary>
internal sealed class CsvEdit
{
    private readonly string _mark;
    private readonly char _delimiter;
    private readonly List<(int Line, List<string> Cells, string End)> _rows = [];

    /// <exception cref="InvalidDataException">The text cannot be taken apart and put together again.</exception>
    public CsvEdit(string text)
    {
        var clean = text.TrimStart('\uFEFF');
        _mark = text[..^clean.Length];
        _delimiter = CsvRows.Delimiter(clean);
        var (at, line) = (0, 1);
        using var reader = CsvRows.Raw(clean, _delimiter);
        foreach (var row in reader)
        {
            var cells = new List<string>(row.ColCount);
            for (var i = 0; i < row.ColCount; i++)
            {
                cells.Add(row[i].ToString());
            }

            at += row.Span.Length;
            var end = LineEnd(clean.AsSpan(Math.Min(at, clean.Length)));
            at += end.Length;
            _rows.Add((line, cells, end));
            line += CsvRows.LinesOf(row.Span);
        }

        if (!string.Equals(ToString(), text, StringComparison.Ordinal))
        {
            throw new InvalidDataException("The file cannot be changed cell by cell. Save it as CSV once more, and try again.");
        }
    }

    /// <summary>Writes a cell, in quotation marks where the old one or, for a new cell, the row's first one has them; a short row grows.</summary>
    /// <param name="line">Of the row, from 1.</param>
    /// <param name="column">From 0.</param>
    /// <param name="text">Without delimiter, quotation mark and line break.</param>
    public void Set(int line, int column, string text)
    {
        var cells = _rows.Find(r => r.Line == line).Cells ?? throw new ArgumentOutOfRangeException(nameof(line), line, "No row begins there.");
        var isNew = cells.Count <= column;
        while (cells.Count <= column)
        {
            cells.Add("");
        }

        var old = cells[column];
        var inner = old.Trim();
        var written = (isNew ? cells[0].Trim() : inner).StartsWith('"') ? $"\"{text}\"" : text;
        var before = old.Length - old.TrimStart().Length;
        cells[column] = inner.Length == 0 ? written : string.Concat(old.AsSpan(0, before), written, old.AsSpan(before + inner.Length));
    }

    public override string ToString() => _mark + string.Concat(_rows.Select(r => string.Join(_delimiter, r.Cells) + r.End));

    private static string LineEnd(ReadOnlySpan<char> rest) => rest switch
    {
        ['\r', '\n', ..] => "\r\n",
        ['\n', ..] => "\n",
        ['\r', ..] => "\r",
        _ => "",
    };
}
