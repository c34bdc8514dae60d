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

        var date = site.Clock.DateOf(run.Begins);
        var today = site.Clock.ToInstant(date, window.Closes);
        var closes = today > run.Begins ? today : site.Clock.ToInstant(date.AddDays(1), window.Closes);
        return Math.Max(0, (run.Finishes - closes).TotalMinutes);
    }
}
