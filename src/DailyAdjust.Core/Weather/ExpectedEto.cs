using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The reference ET that a day is expected to have, mm.</summary>
public static class ExpectedEto
{
    private const int DaysOfMean = 7;
    private const int OldestDays = 45;

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
    internal static double? ForUnknown(DateOnly day, IReadOnlyList<WeatherDay> before, MonthlyNormals? normals) =>
        MeanOfLastKnown(day, before) ?? Normal(day, normals);

    private static double? MeanOfLastKnown(DateOnly before, IReadOnlyList<WeatherDay> days)
    {
        var (sum, count) = (0.0, 0);
        for (var i = days.Count - 1; i >= 0 && count < DaysOfMean; i--)
        {
            var day = days[i];
            if (day.Date < before && day.Date >= before.AddDays(-OldestDays)
                && day.EtoMm is { } eto && day.Basis is not (EtoBasis.Expected or EtoBasis.Open))
            {
                sum += eto;
                count++;
            }
        }

        return count == 0 ? null : sum / count;
    }

    private static double? Normal(DateOnly day, MonthlyNormals? normals) => normals?.EtoMmPerDay[day.Month - 1];
}
