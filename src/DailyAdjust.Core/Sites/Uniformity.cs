namespace DailyAdjust.Core.Sites;

/// <summary>What uneven water does to the minutes.</summary>
public static class Uniformity
{
    /// <summary>
    /// Share of a run that counts where the drier ground is to have enough: 0.4 + 0.6 × lower-quarter distribution uniformity. Its inverse is the run-time multiplier.
    /// Source: landscape irrigation handbooks, from memory.
    /// </summary>
    /// <param name="lowerQuarter">Lower-quarter distribution uniformity, 0 to 1.</param>
    /// <returns>0.4 to 1.</returns>
    public static double Efficiency(double lowerQuarter) => 0.4 + (0.6 * lowerQuarter);
}
