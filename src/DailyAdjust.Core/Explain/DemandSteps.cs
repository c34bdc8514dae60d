using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Explain;

/// <summary>What a zone can hold, and what its turf asks of it on a day.</summary>
internal static class DemandSteps
{
    public static IEnumerable<Step> RootZone(ZonePlan zone)
    {
        var area = zone.Station.Area;
        yield return Step.Of(
            "total available water", "TAW", "{AW} * {Zr}", zone.TotalAvailableMm, "mm", "[FAO56] eq. 82", new("AW", area.Soil.AvailableWaterMmPerM), new("Zr", area.RootDepthM));
        yield return Step.Of("allowable depletion", "RAW", "{p} * {TAW}", zone.AllowableMm, "mm", "[FAO56] eq. 83", new("p", area.AllowableDepletion), new("TAW", zone.TotalAvailableMm));
    }

    public static IEnumerable<Step> OfDay(ZonePlan zone, DateOnly date, double etoMm)
    {
        var (kc, exposure) = (zone.Station.Area.Kc, zone.Station.Exposure);
        var span = CropCoefficient.Around(kc, date);
        var onDate = CropCoefficient.On(kc, date);
        yield return Step.Of(
            FormattableString.Invariant($"crop coefficient, {span.DaysSince} of {span.Days} days from one 15th to the next"), "Kc", "{Ka} + ({Kb} - {Ka}) * {n} / {N}",
            onDate, "", "monthly values of the area; straight lines between them: common practice",
            new("Ka", span.From), new("Kb", span.To), new("n", span.DaysSince), new("N", span.Days));
        yield return Step.Of("coefficient of the station", "K", "{Kc} * {exposure}", onDate * exposure, "", "site description", new("Kc", onDate), new("exposure", exposure));
        yield return Step.Of("demand of the day without stress", "D", "{ETo} * {K}", etoMm * (onDate * exposure), "mm", "[FAO56] ch. 6", new("ETo", etoMm), new("K", onDate * exposure));
    }
}
