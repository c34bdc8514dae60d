using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Water;

/// <summary>Water, and days beyond the allowable depletion, by area.</summary>
internal static class AreaBooks
{
    /// <summary>A depth that is no depth, mm: the balance closes to 1e-9.</summary>
    private const double NothingMm = 1e-6;

    public static IReadOnlyList<AreaWater> Of(Site site, IReadOnlyList<StationWater> runs, IReadOnlyList<ZoneDay> days)
    {
        var litres = runs.GroupBy(r => r.Station.Area.Name, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.Sum(r => r.Litres), StringComparer.Ordinal);
        var zones = days.GroupBy(d => d.Area, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.GroupBy(d => d.Station).Select(Of).ToList(), StringComparer.Ordinal);
        return [.. site.Areas.Where(a => zones.ContainsKey(a.Name)).Select(area => Area(site, area.Name, litres.GetValueOrDefault(area.Name), zones[area.Name]))];
    }

    private static AreaWater Area(Site site, string area, double litres, List<ZoneSum> zones)
    {
        var stations = site.Stations.ToDictionary(s => s.Key);

        // A station that the site no longer has lacks its ground too.
        var weight = zones.TrueForAll(z => stations.ContainsKey(z.Station)) ? GroundWeight.Of(zones.Select(z => stations[z.Station])) : null;
        double Weight(ZoneSum zone) => weight?.Invoke(stations[zone.Station]) ?? 1;
        var whole = zones.Sum(Weight);
        double Mean(Func<ZoneSum, double> value) => zones.Sum(z => value(z) * Weight(z)) / whole;
        var worst = zones.MaxBy(z => z.DaysBeyond)!;
        return new AreaWater(
            area, litres, Mean(z => z.IrrigationMm), Mean(z => z.DrainedMm), Mean(z => z.DaysBeyond),
            worst.DaysBeyond > 0 ? stations.GetValueOrDefault(worst.Station) is { Name.Length: > 0 } named ? $"{named.Name} ({worst.Station})" : worst.Station.ToString() : "",
            worst.DaysBeyond);
    }

    private static ZoneSum Of(IGrouping<StationKey, ZoneDay> zone) => new(
        zone.Key,
        zone.Sum(d => d.IrrigationMm + d.HoseMm),
        zone.Sum(d => d.DrainageMm),
        zone.Count(d => d.DepletionMm > d.RawMm + NothingMm));

    private sealed record ZoneSum(StationKey Station, double IrrigationMm, double DrainedMm, int DaysBeyond);
}
