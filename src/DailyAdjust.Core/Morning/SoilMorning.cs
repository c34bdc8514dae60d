using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>Depletion of every zone at 00:00 of the sheet's date; where days are open, as it was when they began.</summary>
internal static class SoilMorning
{
    public static IReadOnlyDictionary<StationKey, double> DepletionMm(Site site, SoilState end) =>
        site.Stations.ToDictionary(
            s => s.Key,
            s => Math.Min(end.DepletionMm.GetValueOrDefault(s.Key), s.Area.TotalAvailableWaterMm));
}
