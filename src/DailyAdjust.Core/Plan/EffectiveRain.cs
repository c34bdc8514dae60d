using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Plan;

/// <summary>Effective rain of a mean month.</summary>
/// <param name="FromNormals">By the month's rule from its normal total; else by the day's rule from days.</param>
public sealed record MonthRain(double Mm, bool FromNormals)
{
    /// <summary>From days: over how many years; null = from normals.</summary>
    public int? Years { get; init; }
}

/// <summary>Effective rain of one calendar month by the day's rule.</summary>
/// <param name="MeanMm">Of the years that are known, mm.</param>
/// <param name="Years">How many are, 1 or more.</param>
public sealed record KnownMonth(double MeanMm, int Years);

/// <summary>What of a day's rain serves the turf, by a rule of the trade; the balance has its own, with the soil's own room.</summary>
public static class EffectiveRain
{
    /// <summary>A mean of fewer years of days says what fell, not what is usual: it is not taken off. Source: [WMO1203] (period averages; a normal proper has 30 years).</summary>
    public const int LeastYears = 10;

    private const double LostInches = 0.10;
    private const double FullUpToInches = 1;
    private const double PartUpToInches = 2;
    private const double Part = 2.0 / 3;

    /// <summary>The share of a month's days that must be known for it to count, as for normals. Common practice.</summary>
    private const double LeastShare = 0.9;

    /// <summary>The first 0.10 in are lost; up to 1 in all of the rest counts, from 1 to 2 in two thirds, above 2 in nothing. Source: Texas A&amp;M (Texas ET network).</summary>
    /// <param name="rainMm">Of one day, mm, 0 or more.</param>
    /// <returns>mm.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Negative, or not a number.</exception>
    public static double OfDay(double rainMm)
    {
        if (double.IsNaN(rainMm))
        {
            throw new ArgumentOutOfRangeException(nameof(rainMm), rainMm, "Rain is a number.");
        }

        ArgumentOutOfRangeException.ThrowIfNegative(rainMm);
        var inches = rainMm / Depth.MmPerInch;
        var full = Math.Max(0, Math.Min(inches, FullUpToInches) - LostInches);
        var part = Part * Math.Max(0, Math.Min(inches, PartUpToInches) - FullUpToInches);
        return (full + part) * Depth.MmPerInch;
    }

    /// <summary>
    /// Of a month of which only the total is known: 0.8 P - 25 mm above 75 mm, 0.6 P - 10 mm below, at least 0; on slopes up to 5 %. Source: [FAOTM3] ch. 4 (from memory).
    /// </summary>
    /// <param name="rainMm">Total of the month, mm, 0 or more.</param>
    /// <returns>mm.</returns>
    public static double OfMonthlyTotal(double rainMm) => Math.Max(0, rainMm > 75 ? (0.8 * rainMm) - 25 : (0.6 * rainMm) - 10);

    /// <summary>A mean year: by the day's rule from days that are known over <see cref="LeastYears"/>, else by the month's rule from normals.</summary>
    /// <param name="days">Any.</param>
    /// <param name="gauge">Whose rain.</param>
    /// <param name="before">Only months that ended before this date count.</param>
    /// <param name="normalsMm">12 monthly totals, or none.</param>
    /// <returns>12 months, January first; null where neither knows one.</returns>
    public static IReadOnlyList<MonthRain?> OfYear(IReadOnlyList<WeatherDay> days, string gauge, DateOnly before, IReadOnlyList<double> normalsMm)
    {
        var ofDays = OfMonths(days, gauge, before);
        return [.. Enumerable.Range(0, 12).Select(m => ofDays[m] is { Years: >= LeastYears } known ? new MonthRain(known.MeanMm, FromNormals: false) { Years = known.Years }
            : normalsMm.Count == 12 ? new MonthRain(OfMonthlyTotal(normalsMm[m]), FromNormals: true) : null)];
    }

    /// <summary>Mean effective rain of each calendar month over the years that are known; null where no such month is.</summary>
    /// <param name="days">Any.</param>
    /// <param name="gauge">Whose rain.</param>
    /// <param name="before">Only months that ended before this date count.</param>
    public static IReadOnlyList<KnownMonth?> OfMonths(IReadOnlyList<WeatherDay> days, string gauge, DateOnly before)
    {
        var months = days.GroupBy(d => (d.Date.Year, d.Date.Month))
            .Where(m => new DateOnly(m.Key.Year, m.Key.Month, 1).AddMonths(1) <= before)
            .Select(m => (m.Key.Month, Sum: OfMonth(m, gauge, DateTime.DaysInMonth(m.Key.Year, m.Key.Month))))
            .Where(m => m.Sum is not null)
            .ToLookup(m => m.Month, m => m.Sum!.Value);
        return [.. Enumerable.Range(1, 12).Select(m => months[m].Any() ? new KnownMonth(months[m].Average(), months[m].Count()) : null)];
    }

    /// <summary>Made up to the whole month where a day is missing.</summary>
    private static double? OfMonth(IEnumerable<WeatherDay> days, string gauge, int length)
    {
        var known = days
            .Select(d => d.Rain.FirstOrDefault(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal))?.RainMm)
            .OfType<double>()
            .ToList();
        return known.Count >= LeastShare * length ? known.Average(OfDay) * length : null;
    }
}
