using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Json;
using DailyAdjust.Reports.Languages;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports;

/// <summary>An issued sheet as mail sees it: what it asks for, and what its subject says.</summary>
public sealed class SheetMail
{
    private readonly string _asks;

    /// <param name="adviceJson">The sheet's advice.json as it was issued, UTF-8.</param>
    /// <param name="site">The description that it was made by.</param>
    /// <exception cref="System.Text.Json.JsonException">The file is no advice.json.</exception>
    public SheetMail(ReadOnlySpan<byte> adviceJson, Site site)
    {
        var advice = IssuedAdvice.Read(adviceJson, site);
        var document = AdviceJson.Read(adviceJson);
        Subject = MailWords.Subject(advice, site, IssuedAdvice.Day(document.Date), document.Issue, document.ReplacesIssue).In(SheetLanguages.Of(site.Report.Language));
        AsksForSomething = advice.Programs.Any(p => p.NeedsVisit) || advice.Freshness.NoAdvice is not null || advice.StationsByHand > 0
            || advice.HandRuns.Count > 0 || advice.BoxesToVerify.Count > 0 || advice.ClocksToMove.Count > 0 || advice.StartBoxes.Count > 0;
        _asks = SheetAsks.Of(document);
    }

    /// <summary>One line: site, date, and how many changes.</summary>
    public string Subject { get; }

    /// <summary>There is a box to open or ground to water by hand, or no sound advice, which silence must not hide.</summary>
    public bool AsksForSomething { get; }

    /// <summary>Whether a person would do the same by both.</summary>
    public bool AsksTheSameAs(SheetMail other) => string.Equals(_asks, other._asks, StringComparison.Ordinal);
}
