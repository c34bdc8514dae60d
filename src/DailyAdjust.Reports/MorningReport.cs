using System.Text;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Json;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Text;

namespace DailyAdjust.Reports;

/// <summary>The report of one morning, in every form. Pure: the same sheet and issue give the same bytes.</summary>
public static class MorningReport
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>In the site's language; what machines read is the same in every one.</summary>
    public static ReportFiles Render(MorningSheet sheet, SheetIssue issue) => Render(new SheetView(sheet, issue));

    /// <summary>The same in another language.</summary>
    public static ReportFiles Render(MorningSheet sheet, SheetIssue issue, Language language) => Render(new SheetView(sheet, issue, language));

    private static ReportFiles Render(SheetView view)
    {
        var sheet = view.Sheet;
        var advice = AdviceTable.Of(sheet.Programs.Select(p => AdviceRow.Of(sheet.Date, sheet.Site.Clock, p)));
        return new ReportFiles(
        [
            File(ReportFiles.Html, HtmlReport.Write(view)),
            File(ReportFiles.Text, ShortReport.Write(view)),
            File(ReportFiles.FullText, TextReport.Write(view)),
            File(ReportFiles.RoundCsv, RoundTable.Of(view).ToCsv()),
            File(ReportFiles.AdviceCsv, advice.ToCsv()),
            File(ReportFiles.AdviceJson, AdviceJson.Write(view)),
        ]);
    }

    private static ReportFile File(string name, string text) => new(name, Utf8.GetBytes(text));
}
