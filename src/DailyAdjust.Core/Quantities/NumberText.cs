using System.Globalization;

namespace DailyAdjust.Core.Quantities;

/// <summary>Numbers as files write them: a decimal point, no thousands marks, finite.</summary>
public static class NumberText
{
    private const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent
        | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite;

    public static bool TryParse(ReadOnlySpan<char> text, out double value) =>
        double.TryParse(text, Plain, CultureInfo.InvariantCulture, out value) && double.IsFinite(value);

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
