namespace DailyAdjust.Core.Quantities;

/// <summary>A depth of water over the ground, in mm. Any finite number; the default is 0 mm.</summary>
/// <param name="Mm">The depth in millimetres (1 mm = 1 litre on 1 m²).</param>
public readonly record struct Depth(double Mm) : IComparable<Depth>
{
    /// <summary>Two depths closer than this are the same depth, mm.</summary>
    public const double ToleranceMm = 1e-9;

    /// <summary>Millimetres in an inch (exact by definition).</summary>
    public const double MmPerInch = 25.4;

    public double Inches => Mm / MmPerInch;

    public static Depth operator +(Depth a, Depth b) => new(a.Mm + b.Mm);

    public static Depth operator -(Depth a, Depth b) => new(a.Mm - b.Mm);

    public static Depth Add(Depth a, Depth b) => a + b;

    public static Depth Subtract(Depth a, Depth b) => a - b;

    public int CompareTo(Depth other) => Mm.CompareTo(other.Mm);

    public static bool operator <(Depth a, Depth b) => a.Mm < b.Mm;

    public static bool operator >(Depth a, Depth b) => a.Mm > b.Mm;

    public static bool operator <=(Depth a, Depth b) => a.Mm <= b.Mm;

    public static bool operator >=(Depth a, Depth b) => a.Mm >= b.Mm;
}
