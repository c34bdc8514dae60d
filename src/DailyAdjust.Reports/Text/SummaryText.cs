using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What <c>summary</c> prints: the books of a span in words and two tables.</summary>
public static class SummaryText
{
    /// <param name="site">As it is on the last date.</param>
    /// <param name="books">Of the span.</param>
    public static string Write(Site site, WaterBooks books)
    {
        var words = new SiteWords(site.Units, site.Clock, books.To);
        var lines = new TextLines(Language.English);
        lines.Add($"{site.Name}: {SummaryWords.Title}, {SummaryWords.Span(books.From, books.To)}");
        lines.Add(SummaryWords.Estimated(books, words));
        lines.Add(SummaryWords.YearBefore(books, words));
        lines.Add(SummaryWords.Saved(books, words));
        lines.Add(SummaryWords.Weather(books, words));
        lines.Blank();
        var text = lines + SummaryTable.Programs(books, words).ToText() + "\n" + SummaryTable.Areas(books, words).ToText() + "\n";
        var rest = new TextLines(Language.English);
        foreach (var use in books.Limits)
        {
            rest.Add(SummaryWords.Limit(use, words));
        }

        rest.Add(books.Limits.Count > 0 ? SummaryWords.Local : SummaryWords.NoLimits);
        rest.Add(WaterWords.HowEstimated(books.StationsWithoutFlow));
        return text + rest;
    }
}
