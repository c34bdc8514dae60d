namespace DailyAdjust.Core.Weather;

/// <summary>Monthly means of ETo and rain, from days of weather.</summary>
public static class NormalsOfDays
{
    /// <summary>A month of a year counts if at least this share of its days is known. Common practice.</summary>
    private const double LeastShare = 0.9;

    /// <summary>What the days give.</summary>
    /// <param name="days">Any; months of which too little is known are left out, and expected or open days are not known.</param>
    /// <param name="gauge">Whose rain.</param>
    /// <param name="before">Only months that ended before this date count.</param>
    /// <returns>Twelve months from January: mean ETo, mm/day, and mean total of rain, mm (made up to the whole month where a day is missing), each null without a month that counts; and how many of each there were.</returns>
    public static IReadOnlyList<MonthNormal> Of(IReadOnlyList<WeatherDay> days, string gauge, DateOnly before)
    {
        var months = days.GroupBy(day => (day.Date.Year, day.Date.Month))
            .Where(month => new DateOnly(month.Key.Year, month.Key.Month, 1).AddMonths(1) <= before)
            .ToList();
        return [.. Enumerable.Range(1, 12).Select(number => Month(number, [.. months.Where(m => m.Key.Month == number)], gauge))];
    }

    private static MonthNormal Month(int number, IReadOnlyList<IGrouping<(int Year, int Month), WeatherDay>> years, string gauge)
    {
        var eto = years.Select(y => Mean(y, day => day.Basis is EtoBasis.Expected or EtoBasis.Open ? null : day.EtoMm)).OfType<double>().ToList();
        var rain = years
            .Select(y => (Mean: Mean(y, day => day.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal))?.RainMm), Days: DateTime.DaysInMonth(y.Key.Year, y.Key.Month)))
            .Where(y => y.Mean is not null)
            .Select(y => y.Mean!.Value * y.Days)
            .ToList();
        return new(number, eto.Count == 0 ? null : eto.Average(), rain.Count == 0 ? null : rain.Average(), eto.Count, rain.Count);
    }

    /// <summary>Null where too few of the month's days have the value.</summary>
    private static double? Mean(IGrouping<(int Year, int Month), WeatherDay> month, Func<WeatherDay, double?> value)
    {
        var known = month.Select(value).OfType<double>().ToList();
        return known.Count >= LeastShare * DateTime.DaysInMonth(month.Key.Year, month.Key.Month) ? known.Average() : null;
    }
}

/// <summary>One calendar month's means over the years that are known.</summary>
/// <param name="Month">1 to 12.</param>
/// <param name="EtoMmPerDay">Null = no such month is known.</param>
/// <param name="RainMm">Null = no such month is known.</param>
/// <param name="EtoYears">How many months the mean is of.</param>
/// <param name="RainYears">The same for rain.</param>
public sealed record MonthNormal(int Month, double? EtoMmPerDay, double? RainMm, int EtoYears, int RainYears);
