using System.Globalization;
using System.Text;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Printing;

/// <summary>Normals as a person reads them, and as site.yaml does.</summary>
internal static class NormalsText
{
    /// <summary>A line per month, and how many years each rests on.</summary>
    public static string Table(IReadOnlyList<MonthNormal> months, UnitSystem units)
    {
        var (us, perDay, total) = (units == UnitSystem.Us, units == UnitSystem.Us ? "in/day" : "mm/day", units == UnitSystem.Us ? "in" : "mm");
        var text = new StringBuilder($"month  ETo {perDay,-8} years   rain {total,-4} years\n");
        foreach (var month in months)
        {
            text.Append(CultureInfo.InvariantCulture, $"{month.Month,5}  {Shown(month.EtoMmPerDay, us, us ? 3 : 2),12} {month.EtoYears,5}  {Shown(month.RainMm, us, us ? 2 : 0),10} {month.RainYears,5}\n");
        }

        return text.ToString();
    }

    /// <summary>What belongs under weather: in site.yaml; rain only where every month has it.</summary>
    public static string Paste(IReadOnlyList<MonthNormal> months, UnitSystem units)
    {
        var us = units == UnitSystem.Us;
        var text = new StringBuilder("  normals:\n");
        text.Append(CultureInfo.InvariantCulture, $"    eto: {{ unit: {(us ? "in/day" : "mm/day")}, values: [{List(months.Select(m => m.EtoMmPerDay), us, us ? 3 : 2)}] }}\n");
        if (months.All(m => m.RainMm is not null))
        {
            text.Append(CultureInfo.InvariantCulture, $"    rain: {{ unit: {(us ? "in" : "mm")}, values: [{List(months.Select(m => m.RainMm), us, us ? 2 : 0)}] }}\n");
        }

        return text.ToString();
    }

    private static string List(IEnumerable<double?> values, bool us, int decimals) => string.Join(", ", values.Select(value => Shown(value, us, decimals)));

    private static string Shown(double? mm, bool us, int decimals) => mm is { } value
        ? (us ? value / Depth.MmPerInch : value).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
        : "-";
}
