using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>What a controller's percentage can show.</summary>
internal static class Dial
{
    private const double Close = 1e-6;

    /// <summary>A step from 0 within the range, or one of its ends; where there is no percentage, whatever its minutes are of those in stations.csv.</summary>
    public static bool Shows(Controller controller, double percent)
    {
        if (controller.Applies == PercentApplies.None)
        {
            return true;
        }

        var steps = percent / controller.PercentStep;
        return controller.IsInRange(percent)
            && (Math.Abs(steps - Math.Round(steps)) < Close || Math.Abs(percent - controller.PercentMin) < Close || Math.Abs(percent - controller.PercentMax) < Close);
    }

    public static string InWords(Controller controller) =>
        $"{Wording.Number(controller.PercentMin)} to {Wording.Number(controller.PercentMax)} % in steps of {Wording.Number(controller.PercentStep)}";
}
