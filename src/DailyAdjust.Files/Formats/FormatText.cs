using System.Globalization;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Formats;

/// <summary>How public formats write lines, whole numbers, decimals and dates: exactly so, or it is none.</summary>
internal static class FormatText
{
    /// <summary>The next line that is not blank. A line that is no text is refused and passed over.</summary>
    public static bool TryNext(LineReader lines, FormatRows rows, out ReadOnlySpan<char> line)
    {
        while (lines.TryRead(out line))
        {
            if (lines.Fault != LineFault.None)
            {
                RefuseFaulty(lines, rows);
            }
            else if (!IsBlank(line))
            {
                return true;
            }
        }

        return false;
    }

    public static void RefuseFaulty(LineReader lines, FormatRows rows) =>
        rows.Refuse("lines that cannot be split", lines.Number, 1, lines.Fault switch
        {
            LineFault.TooLong => FormattableString.Invariant($"the line is longer than {LineReader.LongestLine} characters"),
            LineFault.NotText => "the line holds bytes that are no text",
            _ => "a quote in this line is not closed",
        }, "The row is not used");

    /// <summary>U+001A is what old systems end a file with.</summary>
    public static bool IsBlank(ReadOnlySpan<char> line) => line.Trim('\u001A').IsWhiteSpace();

    /// <summary>Digits, with a minus before them or without.</summary>
    public static bool TryWhole(ReadOnlySpan<char> text, out int value)
    {
        value = 0;
        return text.Length <= 9 && IsDigits(text is ['-', ..] ? text[1..] : text)
            && int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>Digits, and perhaps a point and digits after it, with a minus before them or without; no exponent.</summary>
    public static bool TryDecimal(ReadOnlySpan<char> text, out double value)
    {
        value = double.NaN;
        var digits = text is ['-', ..] ? text[1..] : text;
        var point = digits.IndexOf('.');
        return text.Length <= 16 && (point < 0 ? IsDigits(digits) : IsDigits(digits[..point]) && IsDigits(digits[(point + 1)..]))
            && double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out value);
    }

    /// <summary>At least one digit and nothing else.</summary>
    public static bool IsDigits(ReadOnlySpan<char> text) => !text.IsEmpty && !text.ContainsAnyExceptInRange('0', '9');

    /// <summary>A date of exactly this pattern, not so far away that it must be a mistake.</summary>
    public static bool TryDate(ReadOnlySpan<char> text, string pattern, out DateOnly date) =>
        DateOnly.TryParseExact(text, pattern, CultureInfo.InvariantCulture, DateTimeStyles.None, out date)
        && date.Year is >= DayWindow.EarliestYear and <= DayWindow.LatestYear;
}
