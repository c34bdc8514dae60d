using DailyAdjust.Core.Advice;

namespace DailyAdjust.Reports.Words;

/// <summary>Which boxes to open where there is no time for all, and what leaving the others costs.</summary>
internal static class VisitListWords
{
    public const string Nothing = "Nothing is to be changed at any box.";
    public const string All = "What is to be done, the costliest box to leave first:";
    public const string Left = "Left as they are:";
    public const string HowReckoned = "Each box is reckoned by itself and by the logbook, before numbers are cut to fit the night or the pump.";

    public static string Only(int boxes, int all) => $"If you can open only {SiteWords.Count(boxes)} of {CommonWords.Count(all, "box", "boxes")}, these, the costliest to leave first:";

    public static string Order(SwitchOff order, string program, SiteWords words) =>
        $"{program}: switch it off, whatever it costs: {FreshnessWords.Sentence(order.Why)}{(order.Until is { } until ? $" {StandingWords.Ends(until, null, words)}." : "")}";

    /// <summary>What not going to some boxes costs, together.</summary>
    public static string Costs(IReadOnlyList<BoxVisit> left, SiteWords words)
    {
        var programs = left.SelectMany(b => b.Programs).ToList();
        var costs = new List<string>();
        if (programs.Exists(p => p.WastedMm > 0))
        {
            costs.Add(programs.TrueForAll(p => p.WastedL is not null)
                ? $"about {words.AboutVolume(programs.Sum(p => p.WastedL!.Value))} would drain"
                : "water would drain (how much in all is not known: the area watered of a station is missing)");
        }

        if (programs.Sum(p => p.ZonesBeyond) is > 0 and var zones)
        {
            costs.Add($"{CommonWords.Count(zones, "zone goes", "zones go")} beyond the allowable depletion, by up to {words.DepthOf(programs.Max(p => p.BeyondMm))}"
                + $", {CommonWords.Count(programs.Sum(p => p.DaysBeyond), "day", "days")} in all, zone by zone");
        }

        var orders = left.Sum(b => b.Orders.Count);
        if (orders > 0)
        {
            costs.Add($"{CommonWords.Count(orders, "program", "programs")} would run against an order");
        }

        return $"Leaving {(left.Count == 1 ? "it" : "them")} until {(left.Count == 1 ? "its" : "their")} next visit costs: {(costs.Count == 0 ? "nothing that is reckoned here; it can wait" : string.Join(", and ", costs))}.";
    }
}
