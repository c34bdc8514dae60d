namespace DailyAdjust.Core.Replay;

/// <summary>
/// The moisture balance by which the trade's test of controllers judges them, beside our own: held between empty and the working storage
/// (the allowable depletion as a depth), a fixed share of rain counts, and turf draws its full demand or runs short of it. Depths in mm.
/// Source: the climatologically based test protocol of the irrigation trade association (8th draft, 2008), from memory; see docs/replay.md.
/// </summary>
public struct ProtocolBalance(double storageMm, double depletionMm)
{
    /// <summary>Share of rain that counts.</summary>
    public const double RainShare = 0.8;

    /// <summary>Depletion, 0 to the storage: its room for water.</summary>
    public double RoomMm { get; private set; } = Math.Clamp(depletionMm, 0, storageMm);

    /// <summary>Demand so far.</summary>
    public double DemandMm { get; private set; }

    /// <summary>Demand that found the storage empty.</summary>
    public double DeficitMm { get; private set; }

    /// <summary>Irrigation at its net depth without runoff, so far.</summary>
    public double AppliedMm { get; private set; }

    /// <summary>Of that: what ran off.</summary>
    public double RunoffMm { get; private set; }

    /// <summary>Of that: what found the storage full.</summary>
    public double SurplusMm { get; private set; }

    /// <summary>100 (ETc − deficit) / ETc; 100 where nothing was asked.</summary>
    public readonly double AdequacyPercent => DemandMm > 0 ? 100 * (DemandMm - DeficitMm) / DemandMm : 100;

    /// <summary>100 − scheduling efficiency: 100 (runoff + surplus) / irrigation; 0 where nothing was watered.</summary>
    public readonly double ExcessPercent => AppliedMm > 0 ? 100 * (RunoffMm + SurplusMm) / AppliedMm : 0;

    /// <summary>Turf draws.</summary>
    public void Draw(double demandMm)
    {
        DemandMm += demandMm;
        var asked = RoomMm + demandMm;
        DeficitMm += Math.Max(0, asked - storageMm);
        RoomMm = Math.Min(storageMm, asked);
    }

    /// <summary>Rain as measured.</summary>
    public void Rain(double rainMm) => RoomMm = Math.Max(0, RoomMm - (RainShare * rainMm));

    /// <summary>One start.</summary>
    /// <param name="appliedMm">Gross depth × application efficiency.</param>
    /// <param name="runoffMm">What of that ran off.</param>
    public void Irrigate(double appliedMm, double runoffMm)
    {
        AppliedMm += appliedMm;
        RunoffMm += runoffMm;
        var reaches = appliedMm - runoffMm;
        SurplusMm += Math.Max(0, reaches - RoomMm);
        RoomMm = Math.Max(0, RoomMm - reaches);
    }
}
