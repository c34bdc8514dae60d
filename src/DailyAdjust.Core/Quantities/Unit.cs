namespace DailyAdjust.Core.Quantities;

/// <summary>What a unit measures, and the metric unit that its values are kept in.</summary>
public enum UnitKind
{
    /// <summary>°C.</summary>
    Temperature,

    /// <summary>Of water: mm.</summary>
    Depth,

    /// <summary>m.</summary>
    Length,

    /// <summary>mm/h.</summary>
    DepthRate,

    /// <summary>mm/day.</summary>
    DepthPerDay,

    /// <summary>Water per depth of soil: mm/m.</summary>
    DepthPerDepth,

    /// <summary>m².</summary>
    Area,

    /// <summary>L/min.</summary>
    Flow,

    /// <summary>L.</summary>
    Volume,

    /// <summary>m/s.</summary>
    Speed,

    /// <summary>The way that wind went in an interval: m.</summary>
    WindRun,

    /// <summary>W/m².</summary>
    RadiationPower,

    /// <summary>MJ/m².</summary>
    RadiationEnergy,

    /// <summary>Percent (50 = 50 %).</summary>
    Percent,

    /// <summary>Minutes.</summary>
    Duration,

    /// <summary>kPa.</summary>
    Pressure,

    /// <summary>Size of a file: MB (10⁶ bytes).</summary>
    Data,
}

/// <summary>A unit of measure; the metric value is (x + <paramref name="Offset"/>) × <paramref name="Factor"/>.</summary>
/// <param name="Kind">What it measures.</param>
/// <param name="Symbol">Its usual spelling, as reports and hints print it.</param>
/// <param name="Factor">Above 0.</param>
/// <param name="Offset">0 but for temperatures.</param>
public sealed record Unit(UnitKind Kind, string Symbol, double Factor, double Offset)
{
    /// <summary>The value in the kind's metric unit.</summary>
    public double ToMetric(double value) => (value + Offset) * Factor;

    /// <summary>The value in this unit, of one in the kind's metric unit.</summary>
    public double FromMetric(double metric) => (metric / Factor) - Offset;
}
