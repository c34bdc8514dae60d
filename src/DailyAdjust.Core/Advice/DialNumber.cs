using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The number that a controller's dial can show.</summary>
public static class DialNumber
{
    private const double HalfGuard = 1e-9;

    /// <summary>An exact percentage on the controller's step (halves up), within its range, never 0.</summary>
    public static double Nearest(Controller controller, double exactPercent)
    {
        var number = Math.Floor((exactPercent / controller.PercentStep) + 0.5 + HalfGuard) * controller.PercentStep;
        return Within(controller, number);
    }

    /// <summary>The largest number on the controller's step that does not exceed a percentage; never 0.</summary>
    public static double AtMost(Controller controller, double percent) =>
        Within(controller, Math.Floor((percent / controller.PercentStep) + HalfGuard) * controller.PercentStep);

    /// <summary>Whether the dial has a number above 0 that does not exceed a percentage.</summary>
    public static bool HasOneUpTo(Controller controller, double percent) => AtMost(controller, percent) <= percent + HalfGuard;

    private static double Within(Controller controller, double number)
    {
        var kept = Math.Min(Math.Max(number, controller.PercentMin), controller.PercentMax);
        return kept > 0 ? kept : controller.PercentStep;
    }
}
