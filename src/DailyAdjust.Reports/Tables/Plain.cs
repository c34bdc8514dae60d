using System.Globalization;

namespace DailyAdjust.Reports.Tables;

/// <summary>Numbers as every machine writes them alike: a point, no grouping, never "-0".</summary>
internal static class Plain
{
    public static string Fixed(double value, int decimals)
    {
        Span<char> certain = stackalloc char[FixedDecimals.Longest];
        if (FixedDecimals.Write(value, decimals, certain) is > 0 and var count)
        {
            return certain[..count].ToString();
        }

        var written = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return written.StartsWith('-') && written.All(c => c is '-' or '0' or '.') ? written[1..] : written;
    }

    public static string Short(double value)
    {
        var written = value.ToString("0.####", CultureInfo.InvariantCulture);
        return string.Equals(written, "-0", StringComparison.Ordinal) ? "0" : written;
    }
}
