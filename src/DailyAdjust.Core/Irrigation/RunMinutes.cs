using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>Minutes that a controller really runs a station.</summary>
public static class RunMinutes
{
    /// <summary>Keeps a product such as 25 × 0.9 from falling below its half by the last bit.</summary>
    private const double HalfGuard = 1e-9;

    /// <summary>Base minutes × percentage, to the controller's step.</summary>
    /// <param name="controller">Its step and rounding.</param>
    /// <param name="baseMinutes">Minutes at 100 %.</param>
    /// <param name="percent">Percent, 0 or more.</param>
    public static double At(Controller controller, double baseMinutes, double percent)
    {
        var steps = baseMinutes * percent / 100 / controller.MinutesStep;
        var whole = controller.Rounding switch
        {
            MinutesRounding.Down => Math.Floor(steps + HalfGuard),
            MinutesRounding.Up => Math.Ceiling(steps - HalfGuard),
            _ => Math.Floor(steps + 0.5 + HalfGuard),
        };
        return whole * controller.MinutesStep;
    }

    /// <summary>On the controller's step, never less than asked for.</summary>
    /// <param name="minutes">Minutes, 0 or more.</param>
    /// <param name="step">The controller's, minutes, above 0.</param>
    public static double Up(double minutes, double step) => Math.Ceiling((minutes / step) - HalfGuard) * step;
}
