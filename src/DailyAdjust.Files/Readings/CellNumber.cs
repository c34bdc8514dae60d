using System.Buffers;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Readings;

/// <summary>A number in a cell: with a point or with a comma, as the file is said to write them; never both, no thousands mark.</summary>
internal static class CellNumber
{
    /// <summary>Beyond it nothing is a measurement, in any unit; the largest numbers of all would leave the range when their unit is converted.</summary>
    public const double Largest = 1e12;

    private const int Longest = 64;

    /// <summary>What people write into one number: a mark of thousands, a unit.</summary>
    private static readonly SearchValues<char> OfOneNumber = SearchValues.Create("0123456789.,+- 'abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ");

    /// <summary>A decimal mark at the end is none: digits may be missing behind it.</summary>
    public static bool TryParse(ReadOnlySpan<char> cell, bool decimalComma, out double value)
    {
        value = double.NaN;
        if (cell is [.., '.' or ','])
        {
            return false;
        }

        if (!decimalComma)
        {
            return NumberText.TryParse(cell, out value) && Math.Abs(value) <= Largest;
        }

        if (cell.Length > Longest || cell.Contains('.'))
        {
            return false;
        }

        Span<char> point = stackalloc char[cell.Length];
        cell.Replace(point, ',', '.');
        return NumberText.TryParse(point, out value) && Math.Abs(value) <= Largest;
    }

    /// <summary>
    /// Whether a cell that is no number looks like two that something runs together: where another cell was split, the row would still have its
    /// width, and every value between them would be another column's.
    /// </summary>
    public static bool LooksLikeTwo(ReadOnlySpan<char> cell)
    {
        var first = cell.IndexOfAnyInRange('0', '9');
        var last = cell.LastIndexOfAnyInRange('0', '9');
        return first >= 0 && cell[first..(last + 1)].IndexOfAnyExcept(OfOneNumber) >= 0;
    }

    /// <summary>Digits after the decimal mark; 0 without one.</summary>
    public static int Decimals(ReadOnlySpan<char> cell, bool decimalComma) =>
        cell.IndexOf(decimalComma ? ',' : '.') is >= 0 and var mark ? cell.Length - mark - 1 : 0;
}
