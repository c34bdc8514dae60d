using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Index;

namespace DailyAdjust.Reports;

/// <summary>The page over all sites of a home and their past days. Pure: the same sites give the same bytes, in whatever order they come.</summary>
public static class AllSites
{
    public const string HtmlFile = "index.html";

    /// <summary>One page for phone and paper; its links are relative to the home folder.</summary>
    public static string Html(IReadOnlyList<IndexSite> sites) =>
        HtmlReport.Write<IndexPage>(new(StringComparer.Ordinal) { [nameof(IndexPage.View)] = new IndexView(sites) });
}
