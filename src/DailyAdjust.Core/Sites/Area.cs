using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Sites;

/// <summary>A soil: what it holds and how fast it takes water in.</summary>
public sealed record Soil
{
    public required string Name { get; init; }

    /// <summary>Available water, mm of water per m of depth, above 0.</summary>
    public required double AvailableWaterMmPerM { get; init; }

    /// <summary>Water content at field capacity, volumetric percent (18 = 18 %); null = probes cannot be used.</summary>
    public double? FieldCapacityPercent { get; init; }

    /// <summary>Null = no limit.</summary>
    public ApplicationRate? IntakeRate { get; init; }

    /// <summary>Allowable surface accumulation.</summary>
    public Depth SurfaceStorage { get; init; }

    /// <summary>[TR55] curve number, above 0 to 100; null = no runoff of rain.</summary>
    public double? CurveNumber { get; init; }
}

/// <summary>A class of turf with shared defaults. Shares are fractions (0.5 = 50 %).</summary>
public sealed record Area
{
    public required string Name { get; init; }

    public required string Grass { get; init; }

    /// <summary>12 crop coefficients, January first, each holding on the 15th of its month.</summary>
    public required IReadOnlyList<double> Kc { get; init; }

    /// <summary>m, above 0.</summary>
    public required double RootDepthM { get; init; }

    public required Soil Soil { get; init; }

    /// <summary>Share of the total available water, above 0 and below 1.</summary>
    public required double AllowableDepletion { get; init; }

    /// <summary>Share of allowable depletion left empty after watering, as room for rain.</summary>
    public double LeaveEmpty { get; init; } = 0.30;

    /// <summary>Application efficiency, above 0 to 1 (given, or 0.4 + 0.6 × lower-quarter distribution uniformity).</summary>
    public required double Efficiency { get; init; }

    /// <summary>Lower quarter, above 0 to 1; null = the site gives the efficiency itself.</summary>
    public double? DistributionUniformity { get; init; }

    /// <summary>Share of allowable depletion before which watering is not due.</summary>
    public double RunAt { get; init; }

    /// <summary>Share of the need put back.</summary>
    public double Replace { get; init; } = 1;

    /// <summary>Null = the site's first gauge.</summary>
    public string? Gauge { get; init; }

    /// <summary>Total available water in the root zone, mm.</summary>
    public double TotalAvailableWaterMm => Soil.AvailableWaterMmPerM * RootDepthM;

    /// <summary>Readily available water: the allowable depletion as a depth, mm.</summary>
    public double AllowableDepletionMm => AllowableDepletion * TotalAvailableWaterMm;
}
