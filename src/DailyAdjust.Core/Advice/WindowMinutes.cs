using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Runs against the site's watering window.</summary>
internal static class WindowMinutes
{
    /// <summary>Whether a run begins in the window; a site without one waters at any hour.</summary>
    public static bool BeginsInside(Site site, PlannedRun run) => site.Window?.Contains(TimeOnly.FromDateTime(site.Clock.ToLocal(run.Begins).DateTime)) ?? true;

    /// <summary>Minutes of a run outside the window; the whole run where it begins outside.</summary>
    public static double Outside(Site site, PlannedRun run)
    {
        if (site.Window is not { } window || run.Finishes <= run.Begins)
        {
            return 0;
        }

        if (!BeginsInside(site, run))
        {
            return (run.Finishes - run.Begins).TotalMinutes;
        }

        return Math.Max(0, (run.Finishes - ClosingAfter(site.Clock, window, run.Begins)).TotalMinutes);
    }

    /// <summary>The first closing after an instant, UTC.</summary>
    public static DateTimeOffset ClosingAfter(SiteClock clock, WateringWindow window, DateTimeOffset begins)
    {
        var date = clock.DateOf(begins);
        var today = clock.ToInstant(date, window.Closes);
        return today > begins ? today : clock.ToInstant(date.AddDays(1), window.Closes);
    }
}
