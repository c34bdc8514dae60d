using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Water;

/// <summary>Inputs to the books of a span: pure, the same inputs give the same books.</summary>
/// <param name="Balance">Days from a kept state (or the site's start) to the span's last, the year of the limits included.</param>
/// <param name="From">The span's first date.</param>
public sealed record WaterBooksInputs(BalanceInputs Balance, DateOnly From)
{
    /// <summary>The same for a year before; null = not known.</summary>
    public WaterBooksInputs? YearBefore { get; init; }
}

/// <summary>Runs the balance over a span and writes down where the water went.</summary>
public static class WaterBooksCalculation
{
    /// <summary>The books; null = the span has no finished day.</summary>
    /// <param name="inputs">All versions of the site, weather, logbook and sheets that the balance needs.</param>
    public static WaterBooks? Of(WaterBooksInputs inputs)
    {
        var (zoneDays, runs, days) = Run(inputs.Balance);
        if (zoneDays.Count == 0 || zoneDays[^1].Date < inputs.From)
        {
            return null;
        }

        var to = zoneDays[^1].Date;
        var from = inputs.From > zoneDays[0].Date ? inputs.From : zoneDays[0].Date;
        var site = SiteVersions.On(inputs.Balance.Versions, to);
        runs.RemoveAll(r => r.Date < from);
        return new WaterBooks
        {
            From = from,
            To = to,
            Days = [.. days.Where(d => d.Date >= from)],
            Programs = ProgramBooks.Of(site, inputs.Balance.Sheets, runs, from, to),
            Areas = AreaBooks.Of(site, runs, [.. zoneDays.Where(d => d.Date >= from)]),
            Metered = Meters.Between(inputs.Balance.Log, from, to),
            MeterSteps = Meters.Steps(inputs.Balance.Log, from, to),
            Limits = LimitBooks.Of(site, inputs.Balance, days, from, to),
            StationsWithoutFlow = site.Stations.Count(s => s.FlowLPerMin is null),
            YearBefore = inputs.YearBefore is { } before ? Of(before) : null,
        };
    }

    /// <summary>The span's days alone, without where their water went.</summary>
    /// <param name="inputs">As for the books.</param>
    public static IReadOnlyList<DayWater> Days(WaterBooksInputs inputs) => [.. Run(inputs.Balance).Days.Where(d => d.Date >= inputs.From)];

    private static (IReadOnlyList<ZoneDay> ZoneDays, List<StationWater> Runs, List<DayWater> Days) Run(BalanceInputs balance)
    {
        var runs = new List<StationWater>();
        var zoneDays = Balance.Run(balance with { OnWater = runs.Add }).Days;
        var litres = runs.GroupBy(r => r.Date).ToDictionary(g => g.Key, g => g.Sum(r => r.Litres));
        return (zoneDays, runs, [.. balance.Weather.Select(w => DayWater.Of(w, litres.GetValueOrDefault(w.Date)))]);
    }
}
