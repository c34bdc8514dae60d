using System.Text.RegularExpressions;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>How a file writes its numbers.</summary>
internal static class NumberForm
{
    private const RegexOptions Plainly = RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking;

    private static readonly Regex Comma = new("^[-+]?[0-9]*,[0-9]+$", Plainly);
    private static readonly Regex Point = new(@"^[-+]?[0-9]*\.[0-9]+$", Plainly);

    /// <summary>Whether numbers have a decimal comma.</summary>
    /// <param name="cells">Of the columns that are used.</param>
    /// <param name="delimiter">What parts them.</param>
    public static Answer<bool> DecimalComma(IEnumerable<string> cells, char delimiter)
    {
        var (commas, points) = (0, 0);
        foreach (var cell in cells)
        {
            commas += Comma.IsMatch(cell) ? 1 : 0;
            points += Point.IsMatch(cell) ? 1 : 0;
        }

        return (commas, points) switch
        {
            ( > 0, 0) => new(true, true, FormattableString.Invariant($"{commas} numbers have a comma, none a point")),
            (0, > 0) => new(false, true, FormattableString.Invariant($"{points} numbers have a point, none a comma")),
            (0, 0) => new(delimiter == ';', delimiter is ',', delimiter is ',' ? "the comma parts the cells" : "no number has decimals in the rows looked at"),
            _ => new(commas > points, false, FormattableString.Invariant($"{commas} numbers have a comma and {points} a point: those of the other form will be set aside")),
        };
    }

    public static double Value(string cell, bool decimalComma) => CellNumber.TryParse(cell, decimalComma, out var value) ? value : double.NaN;
}
