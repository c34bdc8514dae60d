using DailyAdjust.Core.Advice;

namespace DailyAdjust.Reports.Words;

/// <summary>Boxes that nobody visits today: what would be said there, and what not going costs.</summary>
internal static class VisitWords
{
    public const string Title = "If you went today";
    public const string Go = "Go";

    /// <summary>"If you can only open so many boxes: C3, C1, C2, in that order."; empty for fewer than two boxes.</summary>
    public static string Order(IReadOnlyList<VisitWorth> worth)
    {
        var boxes = worth.GroupBy(w => w.Program.Controller, StringComparer.Ordinal).OrderByDescending(g => g.Sum(w => w.Cost)).Select(g => g.Key).ToList();
        return boxes.Count < 2 ? "" : $"If you can open only some of these boxes, in this order: {string.Join(", ", boxes)}.";
    }

    public static string Line(VisitWorth worth, SheetView view)
    {
        var costs = new List<string>();
        if (worth.WastedMm > 0)
        {
            costs.Add($"{view.Words.DepthOf(worth.WastedMm)} would drain{(worth.WastedL is { } litres ? $" (about {view.Words.AboutVolume(litres)})" : "")}");
        }

        if (worth.ZonesBeyond > 0)
        {
            costs.Add($"{SiteWords.Count(worth.ZonesBeyond)} {(worth.ZonesBeyond == 1 ? "zone goes" : "zones go")} beyond the allowable depletion, by up to {view.Words.DepthOf(worth.BeyondMm)}");
        }

        var without = costs.Count > 0 ? $"; without it, until {SiteWords.Date(worth.NextVisit)}: {string.Join(", and ", costs)}" : $"; it can wait until {SiteWords.Date(worth.NextVisit)}";
        return $"{(worth.IsAlert ? Go + ": " : "")}{view.Label(worth.Program)}: {AdviceWords.Said(worth.Advice, worth.Percent)}{without}.";
    }
}
