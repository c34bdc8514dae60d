using System.Text;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Json;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Text;

namespace DailyAdjust.Reports;

/// <summary>The report of one morning, in every form. Pure: the same sheet and issue give the same bytes.</summary>
public static class MorningReport
{
    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    public static ReportFiles Render(MorningSheet sheet, SheetIssue issue)
    {
        var view = new SheetView(sheet, issue);
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
