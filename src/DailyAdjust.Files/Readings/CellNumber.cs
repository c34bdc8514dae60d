using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Readings;

/// <summary>A number in a cell: with a point or with a comma, as the file is said to write them; never both, no thousands mark.</summary>
internal static class CellNumber
{
    private const int Longest = 64;

    public static bool TryParse(ReadOnlySpan<char> cell, bool decimalComma, out double value)
    {
        if (!decimalComma)
        {
            return NumberText.TryParse(cell, out value);
        }

        value = double.NaN;
        if (cell.Length > Longest || cell.Contains('.'))
        {
            return false;
        }

        Span<char> point = stackalloc char[cell.Length];
        cell.Replace(point, ',', '.');
        return NumberText.TryParse(point, out value);
    }

    /// <summary>Digits after the decimal mark; 0 without one.</summary>
    public static int Decimals(ReadOnlySpan<char> cell, bool decimalComma) =>
        cell.IndexOf(decimalComma ? ',' : '.') is >= 0 and var mark ? cell.Length - mark - 1 : 0;
}
