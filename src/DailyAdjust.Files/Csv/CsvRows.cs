using nietras.SeparatedValues;

namespace DailyAdjust.Files.Csv;

/// <summary>A row of a CSV file that people keep: its line, and its cells without quotation marks and outer blanks.</summary>
internal sealed record CsvRow(int Line, IReadOnlyList<string> Cells)
{
    public bool IsEmpty => Cells.All(c => c.Length == 0);

    /// <summary>Whether the row is no wider than its header; where it is, the first cell beyond is told.</summary>
    public bool Fits(int width, ProblemList problems)
    {
        for (var i = width; i < Cells.Count; i++)
        {
            if (Cells[i].Length > 0)
            {
                problems.Error(Line, i + 1, FormattableString.Invariant($"the row has {Cells.Count} cells, the header {width}"), "a text with the delimiter in it belongs in quotation marks");
                return false;
            }
        }

        return true;
    }
}

/// <summary>
/// Reads a small CSV file whole. The delimiter is found from the first line (comma, semicolon, tab or bar); BOM, CRLF,
/// quoted cells and line breaks within them are read. A row with a stray quotation mark is told and left out: it could
/// have swallowed the rows below it.
/// </summary>
internal static class CsvRows
{
    public const int MostCharacters = 16_000_000;

    /// <summary>Rows that are not empty, the header among them.</summary>
    public static IReadOnlyList<CsvRow> Read(string text, ProblemList problems) => Read(text, problems, out _);

    /// <param name="unreadable">Rows that were told and left out.</param>
    public static IReadOnlyList<CsvRow> Read(string text, ProblemList problems, out int unreadable)
    {
        unreadable = 0;
        var rows = new List<CsvRow>();
        var clean = text.TrimStart('\uFEFF');
        if (clean.Length > MostCharacters)
        {
            problems.Error(1, 1, "the file is larger than 16 MB", "is this the right file?");
            return rows;
        }

        if (string.IsNullOrWhiteSpace(clean))
        {
            TellEmpty(problems);
            return rows;
        }

        var delimiter = Delimiter(clean);
        using var reader = Raw(clean, delimiter);
        // Counted here: the reader's own count is one too high for a first row without header.
        var next = 1;
        foreach (var row in reader)
        {
            var line = next;
            next += LinesOf(row.Span);
            var cells = new string[row.ColCount];
            var stray = -1;
            for (var i = 0; i < cells.Length; i++)
            {
                if (!TryUnquote(row[i].Span, out cells[i]) && stray < 0)
                {
                    stray = i;
                }
            }

            var read = new CsvRow(line, cells);
            if (Array.FindIndex(cells, HasControl) is var control and >= 0)
            {
                unreadable++;
                problems.Error(line, control + 1, "a control character stands in the cell; the row was not read", "save the file as CSV in UTF-8");
            }
            else if (stray >= 0)
            {
                unreadable++;
                var last = line + LineBreaks(row.Span.TrimEnd());
                problems.Error(
                    read.Line,
                    stray + 1,
                    last > read.Line
                        ? FormattableString.Invariant($"a quotation mark joins lines {read.Line} to {last}; none of them was read")
                        : "a quotation mark stands inside a cell; the row was not read",
                    "double it and put the whole cell in quotation marks: \"6\"\" deep\"");
            }
            else if (!read.IsEmpty)
            {
                rows.Add(read);
            }
        }

        if (rows.Count == 0 && unreadable == 0)
        {
            TellEmpty(problems);
        }

        return rows;
    }

    /// <summary>A reader of cells as they stand in the text, quotation marks and blanks and all.</summary>
    public static SepReader Raw(string text, char delimiter) =>
        Sep.New(delimiter).Reader(o => o with { HasHeader = false, Unescape = false, DisableColCountCheck = true }).FromText(text);

    /// <summary>Lines that a row takes up.</summary>
    public static int LinesOf(ReadOnlySpan<char> row) => LineBreaks(row) + 1;

    /// <summary>A character that no text of a person has. A tab and a line break are none.</summary>
    public static bool HasControl(string cell) => cell.Any(c => char.IsControl(c) && c is not ('\t' or '\n' or '\r'));

    private static void TellEmpty(ProblemList problems) => problems.Error(1, 1, "the file is empty", "its first line names the columns");

    private static int LineBreaks(ReadOnlySpan<char> text)
    {
        var breaks = 0;
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                breaks++;
            }
        }

        return breaks;
    }

    /// <summary>The sign that the first line has most of, outside quotation marks; a comma where it has none.</summary>
    public static char Delimiter(string text)
    {
        Span<int> counts = stackalloc int[4];
        const string Signs = ",;\t|";
        var quoted = false;
        foreach (var c in text)
        {
            if (c is '\n' or '\r' && !quoted)
            {
                break;
            }

            quoted ^= c == '"';
            if (!quoted && Signs.IndexOf(c) is var sign and >= 0)
            {
                counts[sign]++;
            }
        }

        var most = 0;
        for (var i = 1; i < counts.Length; i++)
        {
            most = counts[i] > counts[most] ? i : most;
        }

        return Signs[most];
    }

    /// <summary>A cell without its quotation marks; false where one stands inside it undoubled.</summary>
    private static bool TryUnquote(ReadOnlySpan<char> raw, out string cell)
    {
        var text = raw.Trim();
        if (!text.Contains('"'))
        {
            cell = text.ToString();
            return true;
        }

        cell = text.ToString();
        if (text.Length < 2 || text[0] != '"' || text[^1] != '"')
        {
            return false;
        }

        var inner = text[1..^1].ToString();
        cell = inner.Replace("\"\"", "\"", StringComparison.Ordinal).Trim();
        return !inner.Replace("\"\"", "", StringComparison.Ordinal).Contains('"', StringComparison.Ordinal);
    }
}
