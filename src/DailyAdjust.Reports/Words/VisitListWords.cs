using DailyAdjust.Core.Advice;

namespace DailyAdjust.Reports.Words;

/// <summary>Which boxes to open where there is no time for all, and what leaving the others costs.</summary>
internal static class VisitListWords
{
    public const string Nothing = "Nothing is to be changed at any box.";
    public const string All = "What is to be done, the costliest box to leave first:";
    public const string Left = "Left as they are:";
    public const string HowReckoned = "Each box is reckoned by itself and by the logbook, before numbers are cut to fit the night or the pump.";

    public static string Only(int boxes, int all) =>
        $"If you can open only {SiteWords.Count(boxes)} of {CommonWords.Count(all, "box", "boxes")}, {(boxes == 1 ? "this one, the costliest to leave:" : "these, the costliest to leave first:")}";

    public static string Order(SwitchOff order, string program, SiteWords words) =>
        $"{program}: switch it off, whatever it costs: {FreshnessWords.Sentence(order.Why)}{(order.Until is { } until ? $" {StandingWords.Ends(until, null, words)}." : "")}";

    /// <summary>What not going to some boxes costs, together.</summary>
    public static string Costs(IReadOnlyList<BoxVisit> left, SiteWords words)
    {
        var programs = left.SelectMany(b => b.Programs).ToList();
        var costs = new List<string>();
        if (programs.Exists(VisitWords.Drains))
        {
            costs.Add(!programs.TrueForAll(p => p.WastedL is not null) ? "water would drain (how much in all is not known: the area watered of a station is missing)"
                : programs.Sum(p => p.WastedL!.Value) is var litres && words.ShowsVolume(litres) ? $"about {words.AboutVolume(litres)} would drain"
                : "a little water would drain");
        }

        if (programs.Sum(p => p.ZonesBeyond) is > 0 and var zones)
        {
            // None where the visit would not spare a day, but only make it less bad.
            var days = programs.Sum(p => p.DaysBeyond);
            costs.Add(VisitWords.PastAllowable(zones, programs.Max(p => p.BeyondMm), words)
                + (days == 0 ? "" : $", on {CommonWords.Count(days, "day", "days")}{(zones > 1 ? " added up over them" : "")}"));
        }

        var orders = left.Sum(b => b.Orders.Count);
        if (orders > 0)
        {
            costs.Add($"{CommonWords.Count(orders, "program", "programs")} would run against an order");
        }

        var (it, its, box) = left.Count == 1 ? ("it", "its", "it") : ("them", "their", "they");
        return $"Leaving {it} until {its} next visit costs: {(costs.Count == 0 ? $"nothing that is reckoned here; {box} can wait" : string.Join(", and ", costs))}.";
    }
}
