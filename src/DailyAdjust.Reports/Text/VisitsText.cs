using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What <c>visits</c> prints: the boxes to open, the lines that they hold, and what leaving the others costs.</summary>
public static class VisitsText
{
    private const int MostLines = 4;

    /// <param name="visits">The morning's boxes.</param>
    /// <param name="boxes">How many can be opened, 1 or more; null = all.</param>
    public static string Write(VisitsToday visits, int? boxes)
    {
        var words = new SiteWords(visits.Site.Units, visits.Site.Clock, visits.Date);
        var lines = new TextLines(Language.English);
        lines.Add($"{visits.Site.Name}: {SiteWords.LongDate(visits.Date)}");
        if (visits.NoAdvice is { } why)
        {
            lines.Add($"! {FreshnessWords.NoAdviceTitle}: {FreshnessWords.Sentence(why)} {FreshnessWords.LeaveDials}");
        }

        foreach (var sheet in visits.UnansweredRounds)
        {
            lines.Add($"! {FreshnessWords.NotAnsweredTitle}: {FreshnessWords.RoundAsLogged(sheet)}");
        }

        lines.Add(Lead(visits, boxes));
        var go = visits.Boxes.Take(boxes ?? int.MaxValue).ToList();
        var left = visits.Boxes.Skip(go.Count).ToList();
        for (var i = 0; i < go.Count; i++)
        {
            Box(lines, $"{SiteWords.Count(i + 1)}. ", go[i], visits.Site, words);
        }

        if (left.Count > 0)
        {
            lines.Add(VisitListWords.Left);
            foreach (var box in left)
            {
                Box(lines, "   ", box, visits.Site, words);
            }

            lines.Add(VisitListWords.Costs(left, words));
        }

        if (visits.Boxes.Count > 0)
        {
            lines.Add(VisitListWords.HowReckoned);
        }

        lines.Add(CautionWords.Short);
        return lines.ToString();
    }

    private static string Lead(VisitsToday visits, int? boxes) =>
        visits.Boxes.Count == 0 ? VisitListWords.Nothing
        : boxes is { } n && n < visits.Boxes.Count ? VisitListWords.Only(n, visits.Boxes.Count)
        : VisitListWords.All;

    private static void Box(TextLines lines, string mark, BoxVisit box, Site site, SiteWords words)
    {
        lines.Add($"{mark}{box.Controller.Id}{(box.Controller.Place.Length > 0 ? ", " + box.Controller.Place : "")}");
        foreach (var order in box.Orders)
        {
            lines.Add("- " + VisitListWords.Order(order, Label(order.Program, site), words), indent: 5, most: MostLines);
        }

        foreach (var worth in box.Programs)
        {
            lines.Add("- " + VisitWords.Line(worth, words, Label(worth.Program, site)), indent: 5, most: MostLines);
        }
    }

    private static string Label(ProgramKey key, Site site) =>
        CommonWords.Named(site.ControllerOf(key.Controller)!.Programs.First(p => string.Equals(p.Id, key.Program, StringComparison.Ordinal)).Name, key.ToString());
}
