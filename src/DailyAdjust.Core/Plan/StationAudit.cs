using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>What to mind about a station's audit.</summary>
public enum AuditRemark
{
    /// <summary>Fewer cups than <see cref="StationAudit.UsualCups"/>.</summary>
    FewCups,

    /// <summary>More wind than <see cref="StationAudit.CalmMPerS"/>.</summary>
    Windy,

    /// <summary>Nobody wrote the wind down.</summary>
    WindUnknown,

    /// <summary>Stations that water the same ground, measured together.</summary>
    Together,

    /// <summary>The rate is far from what the site's description said.</summary>
    RateDiffers,

    /// <summary>The uniformity is poor.</summary>
    Uneven,

    /// <summary>The lowest quarter got nothing: that is no uniformity to water by.</summary>
    DryQuarter,
}

/// <summary>A station's catch cups beside what the site's description says of it.</summary>
/// <param name="Station">As described before.</param>
/// <param name="Audit">Of the run that it was in.</param>
public sealed record StationAudit(Station Station, CatchAudit Audit)
{
    /// <summary>From so many on, chance placing of a cup counts little (common practice).</summary>
    public const int UsualCups = 20;

    /// <summary>5 mph: above it the wind is measured, not the sprinklers. Source: irrigation audit guidelines, from memory.</summary>
    public const double CalmMPerS = 5 * Units.MPerSPerMph;

    /// <summary>What cups lose to evaporation, and catalogues to a pressure that is not theirs, stays below this share (common practice).</summary>
    public const double MuchOfRate = 0.25;

    private const double Tolerance = 1e-9;

    /// <summary>By how much the rate differs from the one described before, as a share of that.</summary>
    public double RateChange => (Audit.RateMmPerHour / Station.Rate.MmPerHour) - 1;

    /// <summary>Nothing of it is stored where the lowest quarter got nothing.</summary>
    public bool IsSound => Audit.LowestMm > 0;

    public IReadOnlyList<AuditRemark> Remarks => [.. Found().Where(r => r.Is).Select(r => r.Remark)];

    /// <summary>One for each station, in the order of the runs.</summary>
    public static IReadOnlyList<StationAudit> Of(IEnumerable<CatchCups> runs) =>
        [.. runs.Select(CatchAudit.Of).SelectMany(audit => audit.Cups.Stations.Select(station => new StationAudit(station, audit)))];

    private IEnumerable<(AuditRemark Remark, bool Is)> Found()
    {
        var cups = Audit.Cups;
        yield return (AuditRemark.FewCups, cups.DepthsMm.Count < UsualCups);
        yield return (AuditRemark.Windy, cups.WindMPerS > CalmMPerS + Tolerance);
        yield return (AuditRemark.WindUnknown, cups.WindMPerS is null);
        yield return (AuditRemark.Together, cups.Stations.Count > 1);
        yield return (AuditRemark.RateDiffers, Math.Abs(RateChange) > MuchOfRate + Tolerance);
        yield return (AuditRemark.Uneven, IsSound && Audit.Class == UniformityClass.Poor);
        yield return (AuditRemark.DryQuarter, !IsSound);
    }
}
