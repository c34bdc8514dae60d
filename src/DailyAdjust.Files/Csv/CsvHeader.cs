namespace DailyAdjust.Files.Csv;

/// <summary>Where each column stands; upper and lower case make no difference.</summary>
internal sealed class CsvHeader
{
    private readonly CsvRow _row;
    private readonly Dictionary<string, int> _at = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Every needed column is there.</summary>
    public bool Complete { get; private set; } = true;

    private CsvHeader(CsvRow row)
    {
        _row = row;
    }

    /// <summary>Reads a header whose columns are all known; tells unknown, double and missing ones.</summary>
    public static CsvHeader Read(CsvRow row, IReadOnlyList<string> known, IReadOnlyList<string> needed, ProblemList problems)
    {
        var header = new CsvHeader(row);
        for (var i = 0; i < row.Cells.Count; i++)
        {
            if (row.Cells[i].Length == 0)
            {
                continue;
            }

            if (Names.Find(known, row.Cells[i]) is not { } name)
            {
                problems.Error(row.Line, i + 1, $"{Wording.Quote(row.Cells[i])} is not a column that is known here", Wording.DidYouMean(row.Cells[i], known, "known columns"));
            }
            else if (!header._at.TryAdd(name, i))
            {
                problems.Error(row.Line, i + 1, $"the column {Wording.Quote(name)} stands there twice", "keep one of them");
            }
        }

        foreach (var name in needed.Where(n => !header._at.ContainsKey(n)))
        {
            header.Complete = false;
            problems.Error(row.Line, 1, $"the column {Wording.Quote(name)} is missing", $"the first line names the columns: {string.Join(",", known)}");
        }

        return header;
    }

    /// <summary>Whether the first line that is not empty names these columns, in any order.</summary>
    public static bool FirstLineHas(string text, params string[] columns)
    {
        var first = text.TrimStart('\uFEFF', '\r', '\n', ' ').Split('\n', 2)[0];
        var cells = first.Split(CsvRows.Delimiter(first)).Select(c => c.Trim().Trim('"').Trim()).ToList();
        return columns.All(c => Names.Find(cells, c) is not null);
    }

    /// <summary>The cell of a column; empty where the file does not have it.</summary>
    public string Cell(CsvRow of, string column) => _at.TryGetValue(column, out var i) && i < of.Cells.Count ? of.Cells[i] : "";

    /// <summary>The column's place, from 1.</summary>
    public int Place(string column) => _at.TryGetValue(column, out var i) ? i + 1 : 1;

    /// <summary>Whether the row is no wider than the header; tells it where it is.</summary>
    public bool Fits(CsvRow of, ProblemList problems) => of.Fits(_row.Cells.Count, problems);
}
