using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>
/// Finds what an address means on a site: site, pump, area:greens, gauge:yard, C1, C1/P2 (program) or C1/3 (station).
/// Upper and lower case make no difference; the place is spelled as the site spells it.
/// </summary>
public static class PlaceText
{
    /// <param name="text">The address.</param>
    /// <param name="site">The site.</param>
    /// <param name="stationFirst">Whether C1/2 is the station, where the controller has a program 2 as well.</param>
    public static Place? Find(string text, Site site, bool stationFirst = false)
    {
        var trimmed = text.Trim();
        if (Is(trimmed, "site"))
        {
            return new(PlaceKind.Site, "", "");
        }

        if (Is(trimmed, "pump"))
        {
            return new(PlaceKind.Pump, "", "");
        }

        if (After(trimmed, "area:") is { } area)
        {
            return Names.Find(site.Areas.Select(a => a.Name), area) is { } name ? new(PlaceKind.Area, name, "") : null;
        }

        if (After(trimmed, "gauge:") is { } gauge)
        {
            return Names.Find(site.Weather.Gauges.Select(g => g.Id), gauge) is { } name ? new(PlaceKind.Gauge, name, "") : null;
        }

        var slash = trimmed.IndexOf('/', StringComparison.Ordinal);
        var id = Names.Find(site.Controllers.Select(c => c.Id), slash < 0 ? trimmed : trimmed[..slash].TrimEnd());
        if (id is null || slash < 0)
        {
            return id is null ? null : new(PlaceKind.Controller, id, "");
        }

        var item = trimmed[(slash + 1)..].TrimStart();
        var controller = site.ControllerOf(id)!;
        Place? program = Names.Find(controller.Programs.Select(p => p.Id), item) is { } p ? new(PlaceKind.Program, id, p) : null;
        Place? station = Names.Find(StationsOf(site, id), item) is { } s ? new(PlaceKind.Station, id, s) : null;
        return stationFirst ? station ?? program : program ?? station;
    }

    /// <summary>What to write instead of an address that is not known: only places of the given kinds, where they are told.</summary>
    internal static string Hint(string text, Site site, params IReadOnlyList<PlaceKind> kinds)
    {
        bool Fits(string address) => kinds.Count == 0 || kinds.Any(k => Find(address, site, stationFirst: k == PlaceKind.Station) is { } place && place.Kind == k);
        var trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            return "write site, pump, area:..., gauge:..., a controller, controller/program or controller/station";
        }

        string[] tagged = [.. site.Areas.Select(a => "area:" + a.Name).Concat(site.Weather.Gauges.Select(g => "gauge:" + g.Id)).Where(Fits)];
        if (tagged.FirstOrDefault(t => t.EndsWith(":" + trimmed, StringComparison.OrdinalIgnoreCase)) is { } whole)
        {
            return $"did you mean {Wording.Quote(whole)}?";
        }

        string[] all =
        [
            "site", "pump", .. tagged,
            .. site.Controllers.Select(c => c.Id),
            .. site.Controllers.SelectMany(c => c.Programs.Select(p => $"{c.Id}/{p.Id}")),
            .. site.Stations.Select(s => s.Key.ToString()),
        ];
        var inBox = kinds.Count == 0 || kinds.Any(k => k is PlaceKind.Controller or PlaceKind.Program or PlaceKind.Station);
        List<string> others = [.. all.Take(2).Where(Fits), .. tagged];
        return Wording.Nearest(trimmed, all, Fits) is { } nearest
            ? $"did you mean {Wording.Quote(nearest)}?"
            : inBox ? $"controllers: {string.Join(", ", site.Controllers.Select(c => c.Id))}{(others.Count > 0 ? "; also " + string.Join(", ", others) : "")}"
            : $"write {Wording.OneOf(others)}";
    }

    private static IEnumerable<string> StationsOf(Site site, string controller) =>
        site.Stations.Where(s => string.Equals(s.Key.Controller, controller, StringComparison.Ordinal)).Select(s => s.Key.Station);

    private static string? After(string text, string tag) =>
        text.StartsWith(tag, StringComparison.OrdinalIgnoreCase) ? text[tag.Length..].Trim() : null;

    private static bool Is(string text, string word) => string.Equals(text, word, StringComparison.OrdinalIgnoreCase);
}
