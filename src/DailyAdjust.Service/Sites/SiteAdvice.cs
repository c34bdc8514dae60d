using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>What would make a site's sheets better: nothing of it must be.</summary>
public static class SiteAdvice
{
    /// <summary>Rates are written with two digits after the point, of inches too.</summary>
    private const double RateToleranceMmPerHour = 0.005 * Depth.MmPerInch;

    public static IEnumerable<string> WouldHelp(Site site)
    {
        if (Named(site, s => s.RateKnown == RateKnown.Assumed && !IsFromFlow(s)) is { } assumed)
        {
            yield return $"The precipitation rate is assumed at {assumed}: catch cups (`dailyadjust audit`) would make its minutes right; a rate from a nozzle chart, or flow and area watered without a rate, come nearer.";
        }

        // The minutes follow from both already; what is missing is only the word on where they are from, which every dry zone's "how sure" hangs on.
        if (Named(site, s => s.RateKnown == RateKnown.Assumed && IsFromFlow(s)) is { } unsaid)
        {
            yield return $"The precipitation rate follows from flow and area watered at {unsaid}, and counts as assumed because rate known does not say where they are from: write catalogue for a nozzle chart, or measure it with catch cups (`dailyadjust audit`).";
        }

        if (Named(site, s => s.GroundM2 is null) is { } ground)
        {
            yield return $"The area watered is missing at {ground}: with it a large zone counts more than a small one.";
        }

        if (Named(site, s => s.FlowLPerMin is null) is { } flow)
        {
            yield return $"The flow is missing at {flow}: with it the sheet shows the water used and whether the pump suffices.";
        }

        foreach (var pointer in BaseProgramCheck.Of(site))
        {
            yield return pointer;
        }

        if (site.PumpCapacityLPerMin is null)
        {
            yield return "pump: { capacity } is missing: with it the sheet flags nights that ask more than the pump gives.";
        }

        if (site.Window is null)
        {
            yield return "window: { opens, closes } is missing: with it the sheet flags runs outside of it.";
        }

        if (site.Weather.Normals is null)
        {
            yield return "weather: normals are missing: with them a gap in the weather leaves the sheet with something to expect.";
        }
    }

    /// <summary>The rate is what flow and area watered make, given or not.</summary>
    private static bool IsFromFlow(Station station) =>
        station is { FlowLPerMin: { } flow, GroundM2: { } ground } && Math.Abs(ApplicationRate.FromFlow(flow, ground).MmPerHour - station.Rate.MmPerHour) < RateToleranceMmPerHour;

    private static string? Named(Site site, Func<Station, bool> which)
    {
        const int Shown = 6;
        var keys = site.Stations.Where(which).Select(s => s.Key.ToString()).ToList();
        return keys.Count == 0 ? null
            : keys.Count == site.Stations.Count ? "every station"
            : keys.Count <= Shown ? string.Join(", ", keys)
            : FormattableString.Invariant($"{string.Join(", ", keys.Take(Shown))} and {keys.Count - Shown} more");
    }
}
