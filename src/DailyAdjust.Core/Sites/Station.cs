using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Sites;

public enum RateKnown
{
    Assumed,
    Catalogue,
    Measured,
}

/// <summary>A station's address: unique in a site; what the balance is carried over by.</summary>
public readonly record struct StationKey(string Controller, string Station)
{
    public override string ToString() => $"{Controller}/{Station}";
}

/// <summary>A program's address.</summary>
public readonly record struct ProgramKey(string Controller, string Program)
{
    public override string ToString() => $"{Controller}/{Program}";
}

/// <summary>One valve or head group; the ground it waters is its zone.</summary>
public sealed record Station
{
    public required StationKey Key { get; init; }

    public string Name { get; init; } = "";

    /// <summary>What people call it: its name, or its address where it has none.</summary>
    public string Label => Name.Length > 0 ? Name : Key.ToString();

    public required Area Area { get; init; }

    /// <summary>Base minutes at 100 % by program id; only programs with minutes above 0.</summary>
    public required IReadOnlyDictionary<string, double> BaseMinutes { get; init; }

    /// <summary>Given, or from flow and area watered, or the area's default.</summary>
    public required ApplicationRate Rate { get; init; }

    public RateKnown RateKnown { get; init; }

    /// <summary>Lower quarter, above 0 to 1, measured at this station; null = what its area says.</summary>
    public double? DistributionUniformity { get; init; }

    /// <summary>Application efficiency, above 0 to 1: from the station's own uniformity, else its area's.</summary>
    public double Efficiency => DistributionUniformity is { } uniformity ? Uniformity.Efficiency(uniformity) : Area.Efficiency;

    /// <summary>L/min; null = unknown.</summary>
    public double? FlowLPerMin { get; init; }

    /// <summary>Ground watered, m²; null = unknown.</summary>
    public double? GroundM2 { get; init; }

    /// <summary>Factor on Kc: shade below 1, crowns and reflected heat above; above 0.</summary>
    public double Exposure { get; init; } = 1;

    /// <summary>The gauge whose rain falls here; resolved (station, else area, else the site's first).</summary>
    public required string Gauge { get; init; }

    public string Note { get; init; } = "";
}
