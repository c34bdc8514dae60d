using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>One station's catch cups after one run.</summary>
/// <param name="Station">Which.</param>
/// <param name="Minutes">How long it ran, above 0.</param>
/// <param name="DepthsMm">Of each cup, mm, 0 or more; at least <see cref="CatchAudit.FewestCups"/>.</param>
public sealed record CatchCups(StationKey Station, double Minutes, IReadOnlyList<double> DepthsMm);

/// <summary>How even a station's water falls, in words.</summary>
public enum UniformityClass
{
    /// <summary>55 % and less.</summary>
    Poor,

    /// <summary>Between poor and what is expected.</summary>
    BelowExpected,

    /// <summary>From 70 %.</summary>
    Expected,

    /// <summary>From 80 %.</summary>
    Excellent,
}

/// <summary>What catch cups tell of a station.</summary>
/// <param name="Cups">What was read.</param>
/// <param name="MeanMm">Mean of all cups, mm.</param>
/// <param name="RateMmPerHour">Net precipitation rate: what reached the cups.</param>
/// <param name="Uniformity">Lower-quarter distribution uniformity, 0 to 1.</param>
/// <param name="Multiplier">Run-time multiplier, 1 to 2.5.</param>
public sealed record CatchAudit(CatchCups Cups, double MeanMm, double RateMmPerHour, double Uniformity, double Multiplier)
{
    /// <summary>Fewer have no quarter.</summary>
    public const int FewestCups = 4;

    private const double Tolerance = 1e-12;

    /// <summary>Share of a run that counts where the lower quarter is to have enough: 0.4 + 0.6 × uniformity. Source: common practice (landscape irrigation handbooks; from memory).</summary>
    public double Efficiency => 0.4 + (0.6 * Uniformity);

    /// <summary>Source: Golf Course Management: 80 % excellent, 70 % expected, 55 % and less poor.</summary>
    public UniformityClass Class => Uniformity switch
    {
        >= 0.80 - Tolerance => UniformityClass.Excellent,
        >= 0.70 - Tolerance => UniformityClass.Expected,
        <= 0.55 + Tolerance => UniformityClass.Poor,
        _ => UniformityClass.BelowExpected,
    };

    /// <summary>
    /// Rate = 60 × mean / minutes; uniformity = mean of the lowest quarter / mean of all (audit guidelines; a quarter that is no whole number of cups is rounded,
    /// halves up); multiplier = 1 / (0.4 + 0.6 × uniformity).
    /// </summary>
    /// <exception cref="ArgumentException">Too few cups, all of them empty, no minutes, or a depth below 0.</exception>
    public static CatchAudit Of(CatchCups cups)
    {
        if (cups.DepthsMm.Count < FewestCups || !(cups.Minutes > 0) || cups.DepthsMm.Any(d => !(d >= 0)) || cups.DepthsMm.Sum() <= 0)
        {
            throw new ArgumentException("At least 4 cups, none below 0, not all empty, and a run above 0 minutes.", nameof(cups));
        }

        var mean = cups.DepthsMm.Average();
        var quarter = (int)Math.Floor((cups.DepthsMm.Count / 4.0) + 0.5);
        var uniformity = Math.Min(1, cups.DepthsMm.Order().Take(quarter).Average() / mean);
        return new(cups, mean, 60 * mean / cups.Minutes, uniformity, 1 / (0.4 + (0.6 * uniformity)));
    }
}
