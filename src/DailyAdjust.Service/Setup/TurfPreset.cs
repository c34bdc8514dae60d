namespace DailyAdjust.Service.Setup;

/// <summary>What a class of turf gets until somebody knows better. All numbers are common practice, to be replaced by the course's own.</summary>
/// <param name="Soil">Name of a <see cref="SoilPreset"/>.</param>
/// <param name="RootDepthIn">Inches.</param>
/// <param name="RootDepthCm">Centimetres.</param>
/// <param name="AllowableDepletion">Percent.</param>
/// <param name="DistributionUniformity">Lower quarter, percent.</param>
/// <param name="RateInPerH">Precipitation rate, in/h.</param>
/// <param name="RateMmPerH">Precipitation rate, mm/h.</param>
/// <param name="More">Further lines, as site.yaml writes them.</param>
internal sealed record TurfPreset(
    string Soil, int RootDepthIn, int RootDepthCm, int AllowableDepletion, int DistributionUniformity, double RateInPerH, int RateMmPerH, params string[] More)
{
    private static readonly TurfPreset Greens = new("sand-rootzone", 6, 15, 50, 70, 0.55, 14);
    private static readonly TurfPreset Tees = new("sandy-loam", 6, 15, 50, 65, 0.55, 14);
    private static readonly TurfPreset Fairways = new("loam", 8, 20, 50, 65, 0.45, 11);
    private static readonly TurfPreset Rough = new("loam", 10, 25, 60, 60, 0.40, 10, "run_at: 60 %              # of allowable depletion: before that, watering is not due");

    /// <summary>The preset of an area by its name; a name of the user's own is treated like fairways.</summary>
    public static TurfPreset Of(string area) =>
        area.Contains("green", StringComparison.Ordinal) ? Greens
        : area.Contains("tee", StringComparison.Ordinal) ? Tees
        : area.Contains("rough", StringComparison.Ordinal) ? Rough
        : Fairways;
}

/// <summary>A soil as site.yaml writes it, in either units. Common practice.</summary>
internal sealed record SoilPreset(string Name, string Us, string Metric)
{
    public static IReadOnlyList<SoilPreset> All { get; } =
    [
        new("sand-rootzone",
            "{ available_water: 1.0 in/ft, field_capacity: 18 %, intake_rate: 0.8 in/h, surface_storage: 0.3 in }",
            "{ available_water: 83 mm/m, field_capacity: 18 %, intake_rate: 20 mm/h, surface_storage: 8 mm }"),
        new("sandy-loam",
            "{ available_water: 1.5 in/ft, field_capacity: 24 %, intake_rate: 0.5 in/h, surface_storage: 0.3 in, curve_number: 61 }",
            "{ available_water: 125 mm/m, field_capacity: 24 %, intake_rate: 12 mm/h, surface_storage: 8 mm, curve_number: 61 }"),
        new("loam",
            "{ available_water: 1.9 in/ft, field_capacity: 30 %, intake_rate: 0.35 in/h, surface_storage: 0.25 in, curve_number: 69 }",
            "{ available_water: 158 mm/m, field_capacity: 30 %, intake_rate: 9 mm/h, surface_storage: 6 mm, curve_number: 69 }"),
    ];
}
