using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Text;

namespace DailyAdjust.Reports;

/// <summary>The books of a span as files: a page, the same for a terminal, and by month and day for whoever asks for the year's use.</summary>
public static class SummaryReport
{
    /// <param name="name">What the files are called, without their endings: week-2026-06-01, season-2026.</param>
    /// <param name="site">As it is on the last date.</param>
    /// <param name="books">Of the span.</param>
    /// <param name="byMonth">Rows of the table: months, else days.</param>
    public static IReadOnlyList<ReportFile> Of(string name, Site site, WaterBooks books, bool byMonth) =>
    [
        new(name + ".html", Encoding.UTF8.GetBytes(HtmlReport.Write<SummaryPage>(new(StringComparer.Ordinal) { [nameof(SummaryPage.Site)] = site, [nameof(SummaryPage.Books)] = books }))),
        new(name + ".txt", Encoding.UTF8.GetBytes(SummaryText.Write(site, books))),
        new(name + ".csv", Encoding.UTF8.GetBytes((byMonth ? SummaryTable.ByMonth(books) : SummaryTable.ByDay(books)).ToCsv())),
    ];
}
