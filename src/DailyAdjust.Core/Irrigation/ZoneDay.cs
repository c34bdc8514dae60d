using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>
/// One zone's water on one site-local day, mm. Closes to 1e-9 mm:
/// Depletion − DepletionBefore = Etc − (Rain − Intercepted − Runoff) − Irrigation − Hose + Drainage + Probe.
/// </summary>
public sealed record ZoneDay
{
    public required DateOnly Date { get; init; }

    public required StationKey Station { get; init; }

    public required string Area { get; init; }

    public required double EtoMm { get; init; }

    /// <summary>Kc × exposure factor.</summary>
    public required double K { get; init; }

    /// <summary>ETc drawn / (ETo · K); 1 where that is 0/0.</summary>
    public required double Ks { get; init; }

    public required double EtcMm { get; init; }

    /// <summary>As measured; null = unknown (0 was booked).</summary>
    public required double? RainMm { get; init; }

    public required double InterceptedMm { get; init; }

    public required double RunoffMm { get; init; }

    /// <summary>Net, with hand-started runs.</summary>
    public required double IrrigationMm { get; init; }

    public required double HoseMm { get; init; }

    public required double DrainageMm { get; init; }

    /// <summary>What probe readings added to depletion (negative: the ground was wetter).</summary>
    public required double ProbeMm { get; init; }

    /// <summary>What a probe reading asked for beyond 0..TAW and was cut, mm (0 mostly).</summary>
    public double ProbeCutMm { get; init; }

    public required double DepletionBeforeMm { get; init; }

    /// <summary>At the end of the day.</summary>
    public required double DepletionMm { get; init; }

    /// <summary>Allowable depletion as a depth.</summary>
    public required double RawMm { get; init; }

    public required double TawMm { get; init; }

    /// <summary>Irrigation that could not enter the ground at the rate it was applied, mm net (not part of IrrigationMm).</summary>
    public double IrrigationRunoffMm { get; init; }

    /// <summary>Gross minutes run by programs and by hand.</summary>
    public double MinutesRun { get; init; }
}
