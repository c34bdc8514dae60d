using System.Text.RegularExpressions;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>How a text stands in lines and cells: what parts the cells, which line names them, and the rows below it.</summary>
/// <param name="Delimiter">Between cells; a blank = runs of blanks.</param>
/// <param name="HeaderLine">From 1.</param>
/// <param name="Header">Its cells.</param>
/// <param name="Units">The cells of the line of units below it; null = there is none.</param>
/// <param name="Rows">As wide as the header or wider.</param>
/// <param name="OtherWidth">Rows that are narrower, of those looked at.</param>
internal sealed record TableShape(
    char Delimiter, int HeaderLine, IReadOnlyList<string> Header, IReadOnlyList<string>? Units, IReadOnlyList<IReadOnlyList<string>> Rows, int OtherWidth)
{
    private const int HeaderLines = 20;
    private const int RowsTried = 10;
    private const char Blanks = ' ';

    private static readonly char[] Signs = [',', ';', '\t', '|'];

    /// <summary>A number, a date or a time of day.</summary>
    private static readonly Regex Value = new(
        @"^[-+]?(\d+([.,]\d*)?|[.,]\d+)([eE][-+]?\d+)?$|^\d{1,4}[-/.]\w{1,9}[-/.]\d{1,4}|^\d{1,2}:\d\d",
        RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking);

    /// <summary>Null = no line names columns that are known and has rows below it.</summary>
    public static TableShape? Find(IReadOnlyList<string> lines)
    {
        var best = Signs.SelectMany(sign => Headers(lines, sign)).OrderByDescending(h => h.Score).FirstOrDefault();
        best = best.Score > 0 ? best : Headers(lines, Blanks).OrderByDescending(h => h.Score).FirstOrDefault();
        return best.Score > 0 ? Read(lines, best.Delimiter, best.Index) : null;
    }

    /// <summary>The cells of a line.</summary>
    public static IReadOnlyList<string> Cells(string line, char delimiter) => [.. HeaderSearch.Cells(line, delimiter).Select(cell => cell.Trim())];

    /// <summary>Whether the first lines hold rows of times and numbers without a header.</summary>
    public static IReadOnlyList<string>? RowWithoutHeader(IReadOnlyList<string> lines) =>
        lines.Take(HeaderLines).Where(line => line.Length > 0)
            .Select(line => Signs.Append(Blanks).Select(sign => Cells(line, sign)).MaxBy(cells => cells.Count(LooksLikeValue)))
            .FirstOrDefault(cells => cells is not null && cells.Count(LooksLikeValue) >= 3);

    private static IEnumerable<(char Delimiter, int Index, int Score)> Headers(IReadOnlyList<string> lines, char delimiter)
    {
        for (var i = 0; i < Math.Min(HeaderLines, lines.Count); i++)
        {
            var header = Cells(lines[i], delimiter);
            var known = header.Where(cell => cell.Length > 0).Sum(Knowledge);
            var values = header.Count(cell => LooksLikeValue(cell) || (cell.Length > 0 && char.IsAsciiDigit(cell[0])));
            if (header.Count < 2 || known < 3 || values > header.Count / 3)
            {
                continue;
            }

            var width = WidthOf(header);
            var fitting = lines.Skip(i + 1).Take(RowsTried).Count(line => line.Length > 0 && Cells(line, delimiter) is var cells && cells.Count >= width && cells.Any(LooksLikeValue));
            if (fitting > 0)
            {
                yield return (delimiter, i, known + fitting);
            }
        }
    }

    /// <summary>A column that is used counts most, one whose words are known counts too.</summary>
    private static int Knowledge(string cell)
    {
        var words = new HeaderWords(cell);
        return TimeWords.AreIn(words) || QuantityWords.Of(words).Quantity is not null ? 3 : QuantityWords.Of(words).Why.Length > 0 ? 1 : 0;
    }

    private static TableShape Read(IReadOnlyList<string> lines, char delimiter, int index)
    {
        var header = Cells(lines[index], delimiter);
        var width = WidthOf(header);
        var rows = new List<IReadOnlyList<string>>();
        IReadOnlyList<string>? units = null;
        var other = 0;
        foreach (var line in lines.Skip(index + 1).Where(line => !string.IsNullOrWhiteSpace(line)))
        {
            var cells = Cells(line, delimiter);
            if (rows.Count == 0 && units is null && !cells.Any(LooksLikeValue) && cells.Count(ColumnUnit.IsUnit) >= 2)
            {
                units = cells;
            }
            else if (cells.Count < width)
            {
                other++;
            }
            else if (cells.Any(LooksLikeValue))
            {
                rows.Add(cells);
            }
        }

        return new(delimiter, index + 1, header, units, rows, other);
    }

    private static int WidthOf(IReadOnlyList<string> header) => header.Count - header.Reverse().TakeWhile(string.IsNullOrWhiteSpace).Count();

    private static bool LooksLikeValue(string cell) => Value.IsMatch(cell);
}
