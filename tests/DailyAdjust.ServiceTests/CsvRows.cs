using System.Globalization;

namespace DailyAdjust.ServiceTests;

/// <summary>Rows of a small CSV without quoted commas in the columns that are looked at.</summary>
public sealed class CsvRows
{
    private readonly string[] _columns;

    private CsvRows(string[] columns, IReadOnlyList<string[]> rows) => (_columns, Rows) = (columns, rows);

    public IReadOnlyList<string[]> Rows { get; }

    public static CsvRows Of(string text)
    {
        var lines = text.ReplaceLineEndings("\n").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        return new(lines[0].Split(','), [.. lines.Skip(1).Select(line => line.Split(','))]);
    }

    public string Text(string[] row, string column) => row[Array.IndexOf(_columns, column)];

    public double? Number(string[] row, string column) =>
        Text(row, column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
}
