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

    /// <summary>Probe readings of the day, in order of time; those of one walk are one.</summary>
    public IReadOnlyList<ProbeFound> Probes => LastProbe?.WithEarlier() ?? [];

    /// <summary>Null where nobody probed.</summary>
    public ProbeFound? LastProbe { get; init; }
}

/// <summary>Reckoning and probe side by side.</summary>
/// <param name="At">UTC.</param>
/// <param name="ReckonedMm">Depletion by the balance right before, mm.</param>
/// <param name="ProbedMm">Depletion by the probe, kept within 0..TAW, mm: the balance goes on with it.</param>
public sealed record ProbeFound(DateTimeOffset At, double ReckonedMm, double ProbedMm)
{
    /// <summary>What was cut to keep it there, mm: below 0 = wetter than field capacity, above 0 = drier than the soil's available water allows.</summary>
    public double CutMm { get; init; }

    /// <summary>The one before it on the same day; a chain rather than a list, so that equal days are equal.</summary>
    public ProbeFound? Earlier { get; init; }

    /// <summary>In order of time, itself last.</summary>
    public IReadOnlyList<ProbeFound> WithEarlier() => [.. Earlier?.WithEarlier() ?? [], this];
}
