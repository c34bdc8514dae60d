using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Reports.Words;

/// <summary>Boxes that nobody visits today: what would be said there, and what not going costs.</summary>
internal static class VisitWords
{
    public const string Title = "If you went today";
    public const string Go = "Go";

    /// <summary>"If you can only open so many boxes: C3, C1, C2, in that order."; empty for fewer than two boxes.</summary>
    public static string Order(SheetView view)
    {
        var boxes = BoxVisit.InOrder(view.Sheet.Site, view.Sheet.IfVisited, []).Select(b => b.Controller.Id).ToList();
        return boxes.Count < 2 ? "" : $"If you can open only some of these boxes, in this order: {string.Join(", ", boxes)}.";
    }

    public static string Line(VisitWorth worth, SheetView view) => (worth.IsAlert ? Go + ": " : "") + Line(worth, view.Words, view.Label(worth.Program));

    /// <summary>What would be said, and what not going costs.</summary>
    public static string Line(VisitWorth worth, SiteWords words, string program)
    {
        var costs = new List<string>();
        if (Drains(worth))
        {
            costs.Add($"{words.DepthOf(worth.WastedMm)} would drain{(worth.WastedL is { } litres && words.ShowsVolume(litres) ? $" (about {words.AboutVolume(litres)})" : "")}");
        }

        if (worth.ZonesBeyond > 0)
        {
            costs.Add(PastAllowable(worth.ZonesBeyond, worth.BeyondMm, words));
        }

        var without = costs.Count > 0 ? $"; without it, until {SiteWords.Date(worth.NextVisit)}: {string.Join(", and ", costs)}" : $"; it can wait until {SiteWords.Date(worth.NextVisit)}";
        return $"{program}: {AdviceWords.Said(worth.Advice, worth.Percent, worth.MinutesOnly)}{MinutesWords.Stations(worth.NewMinutes)}{without}.{(worth.NotedBefore.Length > 0 ? " " + worth.NotedBefore : "")}";
    }

    /// <summary>Enough to be told.</summary>
    public static bool Drains(VisitWorth worth) => worth.WastedMm > Depth.ToleranceMm;

    /// <summary>"1 zone goes past the allowable, by 0.12 in", "5 zones go past the allowable, the worst by 0.26 in".</summary>
    /// <param name="zones">1 or more.</param>
    /// <param name="mm">The worst of them.</param>
    /// <param name="words">The site's.</param>
    public static string PastAllowable(int zones, double mm, SiteWords words) => zones == 1
        ? $"1 zone goes past the allowable, by {words.DepthOf(mm)}"
        : $"{SiteWords.Count(zones)} zones go past the allowable, the worst by {words.DepthOf(mm)}";
}
