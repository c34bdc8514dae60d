using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>What a file writes where it has no value.</summary>
/// <param name="Marks">As site.yaml writes them.</param>
/// <param name="Why">What was seen.</param>
/// <param name="Doubts">What looks like a mark and cannot be one, or only perhaps.</param>
internal sealed record MarkGuess(IReadOnlyList<string> Marks, string Why, IReadOnlyList<string> Doubts)
{
    private const int MostMarks = 12;
    private const int LongestMark = 16;

    /// <summary>Numbers that loggers write for "no value": all nines, and the ends of their integers.</summary>
    private static readonly HashSet<double> Family =
    [
        -99, -999, -9999, -99999, 99, 999, 9999, 99999, -99.9, 99.9, -999.9, 999.9, -9999.9, 9999.9, -99.99, 99.99, 6999, -6999, 7999, -7999, 32767, -32767, -32768, 65535, 65534,
    ];

    private static readonly HashSet<string> Traces = new(StringComparer.OrdinalIgnoreCase) { "T", "TR", "TRACE" };

    public static bool IsOfFamily(double value) => Family.Contains(value);

    /// <param name="columns">Texts of a column, and whether a number can be a value of it.</param>
    public static MarkGuess Of(IReadOnlyList<MarkColumn> columns, bool decimalComma)
    {
        var (marks, counts, doubts) = (new List<string>(), new List<string>(), new List<string>());
        var cells = columns.SelectMany(column => column.Cells.Select(cell => (column, cell))).Where(c => c.cell.Length > 0).ToList();
        foreach (var text in cells.Where(c => double.IsNaN(NumberForm.Value(c.cell, decimalComma))).GroupBy(c => c.cell, StringComparer.OrdinalIgnoreCase).OrderByDescending(g => g.Count()).ThenBy(g => g.Key, StringComparer.Ordinal))
        {
            if (Traces.Contains(text.Key) && text.All(c => c.column.Quantity == WeatherQuantity.Rain))
            {
                doubts.Add($"\"{text.Key}\" in \"{text.First().column.Header}\" may mean a trace of rain: it is set aside as it stands");
            }
            else if (!text.Key.Any(char.IsAsciiDigit) && text.Key.Length <= LongestMark && marks.Count < MostMarks)
            {
                marks.Add(text.Key);
                counts.Add(string.Create(CultureInfo.InvariantCulture, $"\"{text.Key}\" {text.Count()} times"));
            }
        }

        foreach (var column in columns)
        {
            var numbers = column.Cells.Where(cell => cell.Length > 0).Select(cell => (cell, value: NumberForm.Value(cell, decimalComma))).Where(c => !double.IsNaN(c.value)).ToList();
            var outside = numbers.Where(c => !column.CanBe(c.value)).ToList();
            if (outside.Count > 0.5 * numbers.Count && outside.Select(c => c.value).Distinct().Skip(1).Any())
            {
                continue; // Not marks: the unit is another one.
            }

            foreach (var same in outside.GroupBy(c => c.value).Where(g => g.Count() >= 3 || Family.Contains(g.Key)))
            {
                var text = same.First().cell;
                if (columns.FirstOrDefault(other => other != column && other.CanBe(same.Key)) is { } honest)
                {
                    doubts.Add($"{text} in \"{column.Header}\" looks like a mark for missing, but \"{honest.Header}\" can really be {text}: it is not proposed, the limits of {column.Header} set it aside");
                }
                else if (!marks.Contains(text, StringComparer.Ordinal))
                {
                    marks.Add(text);
                    counts.Add(string.Create(CultureInfo.InvariantCulture, $"{text} {same.Count()} times in \"{column.Header}\""));
                }
            }
        }

        return new(marks, counts.Count == 0 ? "no text and no number far outside stands in the columns" : string.Join(", ", counts.Take(MostMarks)), doubts);
    }
}

/// <summary>A column as it is searched for marks.</summary>
internal sealed record MarkColumn(string Header, WeatherQuantity Quantity, IReadOnlyList<string> Cells, Func<double, bool> CanBe);
