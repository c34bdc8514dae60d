using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Service.Sites;

/// <summary>The books of a span, computed from the nearest kept depletions.</summary>
public static class WaterBook
{
    /// <summary>Finished days, both ends included, and the same dates a year before where the balance reaches back so far; null = there is none.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="from">The first date; null = the year's first, or the day on which the balance begins.</param>
    /// <param name="to">The last; null = the last finished day.</param>
    public static WaterBooks? Between(OpenSite site, DateOnly? from, DateOnly? to)
    {
        if (WeatherBook.LastFinished(site) is not { } finished)
        {
            return null;
        }

        var last = to < finished ? to.Value : finished;
        var first = from ?? new DateOnly(last.Year, 1, 1);
        var start = site.Versions[0].Site.Start;
        if (last < start || first > last)
        {
            return null;
        }

        return WaterBooksCalculation.Of(Inputs(site, first > start ? first : start, last) with
        {
            YearBefore = first.AddYears(-1) >= start ? Inputs(site, first.AddYears(-1), last.AddYears(-1)) : null,
        });
    }

    /// <summary>The days of a date's month; empty where the balance does not know all of them.</summary>
    public static IReadOnlyList<DayWater> MonthOf(OpenSite site, DateOnly date)
    {
        var first = new DateOnly(date.Year, date.Month, 1);
        var last = first.AddMonths(1).AddDays(-1);
        if (Kept(site, first, last) is { } kept)
        {
            return kept;
        }

        return first >= site.Versions[0].Site.Start && WeatherBook.LastFinished(site) >= last
            && WaterBooksCalculation.Days(From(site, first, first, last)) is { Count: > 0 } days && days[^1].Date == last ? days : [];
    }

    /// <summary>Days whose water is kept in the ledger, both ends included; null = not all of them are.</summary>
    internal static IReadOnlyList<DayWater>? Kept(OpenSite site, DateOnly first, DateOnly last)
    {
        var litres = site.Ledger.Litres.Between(first, last);
        if (litres.Count != last.DayNumber - first.DayNumber + 1 || litres.Any(d => !string.Equals(d.InputsHash, SoilBook.HashOf(site, d.Day.AddDays(1)), StringComparison.Ordinal)))
        {
            return null;
        }

        var weather = WeatherBook.Through(site, last, first);
        return weather.Count == litres.Count && weather.All(d => d.EtoMm is not null) ? [.. weather.Zip(litres, (day, of) => DayWater.Of(day, of.Litres))] : null;
    }

    /// <summary>The span's first month is counted whole, and the year where the place may take so much in one.</summary>
    private static WaterBooksInputs Inputs(OpenSite site, DateOnly from, DateOnly to)
    {
        var limits = SiteVersions.On(site.Versions, to).WaterLimits;
        var month = new DateOnly(from.Year, from.Month, 1);
        var year = limits.YearOf(to);
        return From(site, limits.HasYear && year < month ? year : month, from, to);
    }

    private static WaterBooksInputs From(OpenSite site, DateOnly begins, DateOnly from, DateOnly to) =>
        new(BalanceBook.InputsThrough(site, to, SoilBook.Newest(site, begins)), from);
}
