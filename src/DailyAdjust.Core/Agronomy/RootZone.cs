namespace DailyAdjust.Core.Agronomy;

/// <summary>
/// The water of one root zone while time runs: turf draws, water comes in, what exceeds field capacity drains at once.
/// A plain value: copying it forks the future. Depths in mm; depletion stays within 0..TAW.
/// Source: [FAO56] ch. 8, eqs 82-88, p. 161-171.
/// </summary>
public struct RootZone(double totalAvailableMm, double allowableMm, double depletionMm)
{
    private double _stress = double.NaN;

    /// <summary>TAW.</summary>
    public readonly double TotalAvailableMm => totalAvailableMm;

    /// <summary>RAW, the allowable depletion.</summary>
    public readonly double AllowableMm => allowableMm;

    /// <summary>Dr, water missing below field capacity.</summary>
    public double DepletionMm { get; private set; } = depletionMm;

    /// <summary>Ks at a depletion: 1 within RAW, then falling to 0 at TAW. Source: [FAO56] eq. 84, p. 169.</summary>
    public static double StressCoefficient(double totalAvailableMm, double allowableMm, double depletionMm) =>
        depletionMm <= allowableMm
            ? 1
            : Math.Max(0, (totalAvailableMm - depletionMm) / (totalAvailableMm - allowableMm));

    /// <summary>A new day: Ks is taken anew when drawing begins.</summary>
    public void BeginDay() => _stress = double.NaN;

    /// <summary>Turf draws a share of the day's unstressed demand.</summary>
    /// <param name="demandMm">ETo · K · Δf, mm; nothing happens at 0 or below.</param>
    /// <returns>What was drawn, mm; never beyond TAW.</returns>
    public double Draw(double demandMm)
    {
        if (demandMm <= 0)
        {
            return 0;
        }

        if (double.IsNaN(_stress))
        {
            _stress = StressCoefficient(totalAvailableMm, allowableMm, DepletionMm);
        }

        var left = totalAvailableMm - DepletionMm;
        var drawn = demandMm * _stress;
        if (drawn >= left)
        {
            // The sum could end a last bit beyond TAW.
            DepletionMm = totalAvailableMm;
            return left;
        }

        DepletionMm += drawn;
        return drawn;
    }

    /// <summary>Water reaches the soil; Ks is taken anew when drawing goes on.</summary>
    /// <param name="waterMm">mm; nothing happens at 0 or below.</param>
    /// <returns>What drained, mm.</returns>
    public double Add(double waterMm)
    {
        if (waterMm <= 0)
        {
            return 0;
        }

        _stress = double.NaN;
        DepletionMm -= waterMm;
        if (DepletionMm >= 0)
        {
            return 0;
        }

        var drained = -DepletionMm;
        DepletionMm = 0;
        return drained;
    }

    /// <summary>A probe reading replaces the reckoning.</summary>
    /// <param name="depletionMm">Depletion by the probe, mm; kept within 0..TAW.</param>
    /// <returns>The change of depletion, and what was cut to keep it in range (asked − kept), mm.</returns>
    public (double ChangeMm, double CutMm) SetTo(double depletionMm)
    {
        var kept = Math.Clamp(depletionMm, 0, totalAvailableMm);
        var change = kept - DepletionMm;
        DepletionMm = kept;
        _stress = double.NaN;
        return (change, depletionMm - kept);
    }
}
