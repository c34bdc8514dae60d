using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// The books as files, with the first sheets after a week's end: that week's, and the season's so far. What came in later is in the season's next
/// one, and in what `summary` prints.
/// </summary>
internal static class SummaryFiles
{
    /// <summary>So many days after a week's end it is written again: its last weather may have been late.</summary>
    private const int DaysWritten = 3;

    /// <param name="site">Opened.</param>
    /// <param name="date">A sheet's date.</param>
    public static void WriteDue(OpenSite site, DateOnly date)
    {
        var (monday, sunday) = CalendarWeek.LastBefore(date);
        var week = "week-" + monday.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        var isThere = File.Exists(Path.Combine(site.Folder.Summaries, week + ".html"));
        if ((isThere && date.DayNumber - sunday.DayNumber > DaysWritten) || WaterBook.Between(site, monday, sunday) is not { } ofWeek)
        {
            return;
        }

        // A sheet of an earlier date is no reason to cut a season short.
        if (!(WeatherBook.LastFinished(site) > sunday.AddDays(7)))
        {
            foreach (var year in new[] { monday.Year, sunday.Year }.Distinct())
            {
                WriteSeason(site, year, sunday);
            }
        }

        Write(site, SummaryReport.Of(week, SiteVersions.On(site.Versions, ofWeek.To), ofWeek, byMonth: false));
    }

    private static void WriteSeason(OpenSite site, int year, DateOnly through)
    {
        var (first, last) = (new DateOnly(year, 1, 1), new DateOnly(year, 12, 31));
        if (WaterBook.Between(site, first, through < last ? through : last) is { } season)
        {
            Write(site, SummaryReport.Of("season-" + year.ToString(CultureInfo.InvariantCulture), SiteVersions.On(site.Versions, season.To), season, byMonth: true));
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
