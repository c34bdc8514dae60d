using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The reference ET that a day is expected to have, mm.</summary>
public static class ExpectedEto
{
    private const int DaysOfMean = 7;

    /// <summary>
    /// Of a day that is still to come: the mean of the last 7 known days before the sheet's date; from the second day on the month's
    /// normal if that is larger; without a known day the normal; null = neither is there.
    /// </summary>
    /// <param name="day">The sheet's date or later.</param>
    /// <param name="sheetDate">The date of the morning.</param>
    /// <param name="known">Days of weather in order of date; those from the sheet's date on are not looked at.</param>
    /// <param name="normals">The site's, or null.</param>
    /// <returns>mm, 0 or more.</returns>
    public static double? For(DateOnly day, DateOnly sheetDate, IReadOnlyList<WeatherDay> known, MonthlyNormals? normals)
    {
        var mean = MeanOfLastKnown(sheetDate, known);
        var normal = Normal(day, normals);
        return mean is { } recent && normal is { } usual && day > sheetDate ? Math.Max(recent, usual) : mean ?? normal;
    }

    /// <summary>Of a past day for which no station knows enough: the mean of the last 7 known days before it, else the month's normal; null = neither.</summary>
    /// <returns>mm, 0 or more, and what it is, in words.</returns>
    internal static (double Mm, string Note)? ForUnknown(DateOnly day, IReadOnlyList<WeatherDay> before, MonthlyNormals? normals)
    {
        if (LastKnown(day, before) is { Count: > 0 } known)
        {
            return (known.Average(), known.Count == 1 ? "reference_et: that of the last known day" : string.Create(CultureInfo.InvariantCulture, $"reference_et: the mean of the last {known.Count} known days"));
        }

        return Normal(day, normals) is { } normal ? (normal, "reference_et: the month's normal") : null;
    }

    private static double? MeanOfLastKnown(DateOnly before, IReadOnlyList<WeatherDay> days) =>
        LastKnown(before, days) is { Count: > 0 } known ? known.Average() : null;

    /// <summary>The reference ET of up to 7 days, newest first.</summary>
    private static List<double> LastKnown(DateOnly before, IReadOnlyList<WeatherDay> days)
    {
        List<double> known = [];
        for (var i = days.Count - 1; i >= 0 && known.Count < DaysOfMean; i--)
        {
            var day = days[i];
            if (day.Date < before && day.Date >= before.AddDays(-LookBack.Days)
                && day.EtoMm is { } eto && day.Basis is not (EtoBasis.Expected or EtoBasis.Open))
            {
                known.Add(eto);
            }
        }

        return known;
    }

    private static double? Normal(DateOnly day, MonthlyNormals? normals) => normals?.EtoMmPerDay[day.Month - 1];
}
