namespace DailyAdjust.Core.Quantities;

/// <summary>A depth of water over the ground, in mm. Any finite number; the default is 0 mm.</summary>
/// <param name="Mm">The depth in millimetres (1 mm = 1 litre on 1 m²).</param>
public readonly record struct Depth(double Mm)
{
    /// <summary>Two depths closer than this are the same depth, mm.</summary>
    public const double ToleranceMm = 1e-9;

    /// <summary>Millimetres in an inch (exact by definition).</summary>
    public const double MmPerInch = 25.4;
}
