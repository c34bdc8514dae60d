using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Skips on a box that can pause by itself: nobody has to come back to turn it on.</summary>
internal static class Pauses
{
    /// <summary>Days of pause for a skip: until the program is wanted again, at most what the box can; null = it cannot pause.</summary>
    /// <param name="controller">The box.</param>
    /// <param name="today">The date of the round.</param>
    /// <param name="wanted">The first later visit on which it could not be left out; null = none in sight.</param>
    public static int? DaysOf(Controller controller, DateOnly today, DateOnly? wanted)
    {
        if (controller.PauseDays < 1)
        {
            return null;
        }

        return wanted is { } day ? Math.Clamp(day.DayNumber - today.DayNumber, 1, controller.PauseDays) : controller.PauseDays;
    }
}
