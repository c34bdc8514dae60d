using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Service.Sites;

/// <summary>What would make a site's sheets better: nothing of it must be.</summary>
public static class SiteAdvice
{
    public static IEnumerable<string> WouldHelp(Site site)
    {
        if (Named(site, s => s.RateKnown == RateKnown.Assumed) is { } assumed)
        {
            yield return $"The precipitation rate is assumed at {assumed}: catch cups (`dailyadjust audit`), or flow and area watered, would make its minutes right.";
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
