using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>What the catch cups of one run tell.</summary>
/// <param name="Cups">What was read.</param>
/// <param name="MeanMm">Mean of all cups, mm.</param>
/// <param name="LowestMm">Mean of the lowest quarter, mm.</param>
/// <param name="RateMmPerHour">Net precipitation rate: what reached the cups, mm/h.</param>
/// <param name="LowerQuarter">Lower-quarter distribution uniformity, 0 to 1.</param>
public sealed record CatchAudit(CatchCups Cups, double MeanMm, double LowestMm, double RateMmPerHour, double LowerQuarter)
{
    /// <summary>Fewer have no quarter.</summary>
    public const int FewestCups = 4;

    /// <summary>Quotients of readings that are equal on paper differ in the last bits.</summary>
    private const double Tolerance = 1e-9;

    /// <summary>Run-time multiplier, 1 to 2.5: the minutes that the mean rate asks for, times this, water the drier ground enough.</summary>
    public double Multiplier => 1 / Uniformity.Efficiency(LowerQuarter);

    public UniformityClass Class => LowerQuarter switch
    {
        >= 0.80 - Tolerance => UniformityClass.Excellent,
        >= 0.70 - Tolerance => UniformityClass.Expected,
        <= 0.55 + Tolerance => UniformityClass.Poor,
        _ => UniformityClass.BelowExpected,
    };

    /// <summary>
    /// Rate = 60 × mean / minutes. Uniformity = mean of the lowest quarter / mean of all. Source: irrigation audit guidelines; where a quarter is no whole number of
    /// cups it is rounded, halves up (common practice).
    /// </summary>
    /// <exception cref="ArgumentException">No station, too few cups, all of them empty, no minutes, or a depth below 0.</exception>
    public static CatchAudit Of(CatchCups cups)
    {
        var depths = cups.DepthsMm;
        if (cups.Stations.Count == 0 || depths.Count < FewestCups || !(cups.Minutes > 0) || depths.Any(d => !double.IsFinite(d) || d < 0) || depths.All(d => d == 0))
        {
            throw new ArgumentException("At least one station, four cups, none below 0, not all empty, and a run above 0 minutes.", nameof(cups));
        }

        var mean = depths.Average();
        var lowest = depths.Order().Take((depths.Count + 2) / 4).Average();
        return new(cups, mean, lowest, 60 * mean / cups.Minutes, Math.Min(1, lowest / mean));
    }
}
