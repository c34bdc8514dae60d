using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Plan;

/// <summary>What of a day's rain serves the turf, by a rule of the trade; the balance has its own, with the soil's own room.</summary>
public static class EffectiveRain
{
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

    /// <summary>Mean effective rain of each calendar month over the years that are known, mm; null where no such month is.</summary>
    /// <param name="days">Any.</param>
    /// <param name="gauge">Whose rain.</param>
    /// <param name="before">Only months that ended before this date count.</param>
    public static IReadOnlyList<double?> OfMonths(IReadOnlyList<WeatherDay> days, string gauge, DateOnly before)
    {
        var months = days.GroupBy(d => (d.Date.Year, d.Date.Month))
            .Where(m => new DateOnly(m.Key.Year, m.Key.Month, 1).AddMonths(1) <= before)
            .Select(m => (m.Key.Month, Sum: OfMonth(m, gauge, DateTime.DaysInMonth(m.Key.Year, m.Key.Month))))
            .Where(m => m.Sum is not null)
            .ToLookup(m => m.Month, m => m.Sum!.Value);
        return [.. Enumerable.Range(1, 12).Select(m => months[m].Any() ? months[m].Average() : (double?)null)];
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
