using System.Globalization;

namespace DailyAdjust.Core.Quantities;

/// <summary>Numbers as files write them: a decimal point, no thousands marks, finite.</summary>
public static class NumberText
{
    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent
        | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    /// <summary>Powers of ten that a double has exactly.</summary>
    private static readonly double[] Tens = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    public static bool TryParse(ReadOnlySpan<char> text, out double value) =>
        TryParsePlain(text, out value)
        || (double.TryParse(text, Plain, CultureInfo.InvariantCulture, out value) && double.IsFinite(value));

    /// <summary>
    /// Digits with at most one point, at most 15 of them: both the digits and the power of ten are exact, so that their quotient is the nearest double, as the
    /// general parser gives it. Files of years have millions of them.
    /// </summary>
    private static bool TryParsePlain(ReadOnlySpan<char> text, out double value)
    {
        value = 0;
        var negative = text is ['-', ..];
        var digits = negative ? text[1..] : text;
        var number = 0L;
        var (count, point) = (0, -1);
        if (digits.Length is 0 or > 16)
        {
            return false;
        }

        foreach (var c in digits)
        {
            if (c == '.' && point < 0)
            {
                point = count;
            }
            else if (char.IsAsciiDigit(c))
            {
                number = (number * 10) + (c - '0');
                count++;
            }
            else
            {
                return false;
            }
        }

        if (count is 0 or > 15)
        {
            return false;
        }

        value = point < 0 ? number : number / Tens[count - point];
        value = negative ? -value : value;
        return true;
    }

    /// <summary>Splits "1.0 in/ft" or "30%" into its number and its unit's spelling (empty when bare).</summary>
    public static bool TrySplit(string text, out double value, out string unit)
    {
        var trimmed = text.AsSpan().Trim();
        var end = 0;
        while (end < trimmed.Length && (char.IsAsciiDigit(trimmed[end]) || trimmed[end] is '.' or '+' or '-' || IsExponent(trimmed, end)))
        {
            end++;
        }

        unit = trimmed[end..].Trim().ToString();
        return TryParse(trimmed[..end], out value) && (unit.Length == 0 || !unit.StartsWith(','));
    }

    /// <summary>Written with a decimal comma (1,5): a mistake to name, never a number to take.</summary>
    public static bool LooksLikeDecimalComma(string text) =>
        text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal) && TryParse(text.Replace(',', '.'), out _);

    private static bool IsExponent(ReadOnlySpan<char> text, int at) =>
        text[at] is 'e' or 'E' && at > 0 && char.IsAsciiDigit(text[at - 1]) && at + 1 < text.Length
        && (char.IsAsciiDigit(text[at + 1]) || (text[at + 1] is '+' or '-' && at + 2 < text.Length && char.IsAsciiDigit(text[at + 2])));
}
