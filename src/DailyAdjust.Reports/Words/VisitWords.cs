using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Reports.Words;

/// <summary>Boxes that nobody visits today: what would be said there, and what not going costs.</summary>
internal static class VisitWords
{
    public static readonly Phrase Title = new("If you went today");
    public static readonly Phrase Go = new("Go");

    /// <summary>"If you can only open so many boxes: C3, C1, C2, in that order."; empty for fewer than two boxes.</summary>
    public static Phrase Order(SheetView view)
    {
        var boxes = BoxVisit.InOrder(view.Sheet.Site, view.Sheet.IfVisited, []).Select(b => b.Controller.Id).ToList();
        return boxes.Count < 2 ? Phrase.Empty : $"If you can open only some of these boxes, in this order: {string.Join(", ", boxes)}.";
    }

    public static Phrase Line(VisitWorth worth, SheetView view) => (worth.IsAlert ? $"{Go}: " : Phrase.Empty) + Line(worth, view.Words, view.Label(worth.Program));

    /// <summary>What would be said, and what not going costs.</summary>
    public static Phrase Line(VisitWorth worth, SiteWords words, string program)
    {
        var costs = new List<Phrase>();
        if (Drains(worth))
        {
            costs.Add($"{words.DepthOf(worth.WastedMm)} would drain{(worth.WastedL is { } litres && words.ShowsVolume(litres) ? $" (about {words.AboutVolume(litres)})" : Phrase.Empty)}");
        }

        if (worth.ZonesBeyond > 0)
        {
            costs.Add(PastAllowable(worth.ZonesBeyond, worth.BeyondMm, words));
        }

        var without = costs.Count > 0 ? Phrase.Of($"; without it, until {SiteWords.Date(worth.NextVisit)}: {And(costs)}") : $"; it can wait until {SiteWords.Date(worth.NextVisit)}";
        return $"{program}: {AdviceWords.Said(worth.Advice, worth.Percent, worth.MinutesOnly)}{MinutesWords.Stations(worth.NewMinutes)}{without}.{(worth.NotedBefore.IsEmpty ? Phrase.Empty : $" {worth.NotedBefore}")}";
    }

    /// <summary>"a", "a, and b".</summary>
    public static Phrase And(IReadOnlyList<Phrase> costs) => costs.Skip(1).Aggregate(costs[0], (before, next) => $"{before}, and {next}");

    /// <summary>Enough to be told.</summary>
    public static bool Drains(VisitWorth worth) => worth.WastedMm > Depth.ToleranceMm;

    /// <summary>"1 zone goes past the allowable, by 0.12 in", "5 zones go past the allowable, the worst by 0.26 in".</summary>
    /// <param name="zones">1 or more.</param>
    /// <param name="mm">The worst of them.</param>
    /// <param name="words">The site's.</param>
    public static Phrase PastAllowable(int zones, double mm, SiteWords words) => zones == 1
        ? Phrase.Of($"1 zone goes past the allowable, by {words.DepthOf(mm)}")
        : $"{SiteWords.Count(zones)} zones go past the allowable, the worst by {words.DepthOf(mm)}";
}
