using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// The books as files, with the first sheet after a week's end: that week's, and the season's so far. What came in later is in the season's next
/// one, and in what `summary` prints.
/// </summary>
internal static class SummaryFiles
{
    /// <param name="site">Opened.</param>
    /// <param name="date">A sheet's date.</param>
    public static void WriteDue(OpenSite site, DateOnly date)
    {
        var (monday, sunday) = CalendarWeek.LastBefore(date);
        var week = "week-" + monday.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        if (File.Exists(Path.Combine(site.Folder.Summaries, week + ".html")) || WaterBook.Between(site, monday, sunday) is not { } ofWeek)
        {
            return;
        }

        Write(site, SummaryReport.Of(week, SiteVersions.On(site.Versions, ofWeek.To), ofWeek, byMonth: false));
        if (WaterBook.Between(site, from: null, sunday) is { } season)
        {
            var year = "season-" + sunday.Year.ToString(CultureInfo.InvariantCulture);
            Write(site, SummaryReport.Of(year, SiteVersions.On(site.Versions, season.To), season, byMonth: true));
        }
    }

    /// <summary>The page last: it says that the others are there.</summary>
    private static void Write(OpenSite site, IReadOnlyList<ReportFile> files)
    {
        foreach (var file in files.Reverse())
        {
            AtomicFile.Write(Path.Combine(site.Folder.Summaries, file.Name), file.Bytes.ToArray());
        }
    }
}
