using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>CSV whose columns a header names: found by their names, in any order. A row is a line below the header that is not blank and does not repeat it.</summary>
/// <param name="delimiter">Between the cells.</param>
/// <param name="needed">Columns without which a line is no header.</param>
/// <param name="others">Columns that are read where the file has them.</param>
internal sealed class HeaderedCsv(char delimiter, IReadOnlyList<string> needed, IReadOnlyList<string> others)
{
    /// <summary>Text that may stand above a header, lines.</summary>
    private const int LinesAbove = 60;

    /// <summary>What a format writes at the end of each row so that a cut one can be seen.</summary>
    private const string EndMark = "eor";

    /// <summary>Whether one of these lines is the header.</summary>
    public bool HasHeader(IEnumerable<string> lines)
    {
        var cells = new CsvCells(delimiter);
        return lines.Any(line => cells.TrySplit(line) && Bind(cells, 0) is not null);
    }

    /// <summary>Reads every row.</summary>
    /// <param name="first">A line that has been read already; null = none.</param>
    public void Read(string? first, LineReader lines, FormatRows rows, Action<NamedCells> take)
    {
        var cells = new CsvCells(delimiter);
        var columns = first is not null && cells.TrySplit(first) ? Bind(cells, lines.Number) : null;
        while (columns is null && lines.Number < LinesAbove && lines.TryRead(out var line))
        {
            columns = cells.TrySplit(line) ? Bind(cells, lines.Number) : null;
        }

        if (columns is null)
        {
            rows.RefuseFile(1, 1, FormattableString.Invariant($"no header with {string.Join(", ", needed)} in the first {LinesAbove} lines"), "Is it a file of this format?");
            return;
        }

        var header = cells.ToArray();
        while (rows.WholeFile is null && FormatText.TryNext(lines, rows, out var line))
        {
            if (!cells.TrySplit(line))
            {
                rows.Refuse("rows that are quoted wrongly", lines.Number, cells.Count + 1, "a quote stands where none can be", "The row is not used; get the file again");
            }
            else if (cells[0].Equals(header[0].AsSpan(), StringComparison.OrdinalIgnoreCase) && Bind(cells, lines.Number) is { } again)
            {
                (columns, header) = (again, cells.ToArray());
            }
            else if (columns.Twice is { } twice)
            {
                rows.RefuseFile(columns.Line, 1, $"the header has \"{twice}\" more than once", "Which of them is meant is not certain");
            }
            else if (cells.Count != header.Length)
            {
                rows.Refuse("rows of another width than the header", lines.Number, Math.Clamp(cells.Count, 1, header.Length + 1), FormattableString.Invariant($"the row has {cells.Count} cells and the header has {header.Length}"), "The row is not used; is the line cut?");
            }
            else if (lines.Number == lines.OpenLine && line is not [.., '"'] && !cells[^1].SequenceEqual(EndMark))
            {
                rows.Refuse("rows that are cut", lines.Number, cells.Count, "the row may be cut: the file ends without ending this line", "The row is not used; drop the file again when it is complete");
            }
            else
            {
                take(new NamedCells(cells, columns, lines.Number));
            }
        }
    }

    private HeaderColumns? Bind(CsvCells cells, int line)
    {
        var texts = cells.ToArray();
        var header = new HeaderText(texts);
        var index = needed.Concat(others).ToDictionary(name => name, header.Find, StringComparer.Ordinal);
        return needed.Any(name => index[name] == HeaderText.Absent)
            ? null
            : new HeaderColumns(line, index, index.Where(column => column.Value == HeaderText.Twice).Select(column => column.Key).Order(StringComparer.Ordinal).FirstOrDefault());
    }
}

/// <summary>Which cell each name stands for.</summary>
/// <param name="Line">Where the header stands.</param>
/// <param name="Index">By name, from 0; below 0 = absent.</param>
/// <param name="Twice">A column that the header has more than once; null = none.</param>
internal sealed record HeaderColumns(int Line, IReadOnlyDictionary<string, int> Index, string? Twice);

/// <summary>A row's cells by the names of the header.</summary>
internal readonly struct NamedCells(CsvCells cells, HeaderColumns columns, int line)
{
    public int Line => line;

    /// <summary>The cell without blanks at its ends; empty where the header has no such column.</summary>
    public ReadOnlySpan<char> this[string name] => columns.Index[name] is >= 0 and var index ? cells[index] : [];

    public bool Has(string name) => columns.Index[name] >= 0;

    /// <summary>From 1.</summary>
    public int Column(string name) => columns.Index[name] + 1;
}
