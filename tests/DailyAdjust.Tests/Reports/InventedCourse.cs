using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Reports;

/// <summary>A course that exists nowhere: five boxes, four areas, two gauges.</summary>
internal static class InventedCourse
{
    public static SiteClock Clock { get; } = new(TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"));

    public static Site Build(UnitSystem units)
    {
        var sand = new Soil { Name = "sand", AvailableWaterMmPerM = 83 };
        var loam = new Soil { Name = "loam", AvailableWaterMmPerM = 167 };
        Area[] areas =
        [
            Ground("greens", sand, 0.15, 0.5),
            Ground("tees", sand, 0.15, 0.5),
            Ground("fairways", loam, 0.20, 0.45),
            Ground("range", loam, 0.25, 0.6),
        ];
        return new Site
        {
            Name = "Quarry Bend Municipal",
            LatitudeDeg = 41.2,
            LongitudeDeg = -93.1,
            ElevationM = 290,
            Clock = Clock,
            Units = units,
            Start = new DateOnly(2026, 4, 1),
            StartSoil = StartSoil.Full,
            Report = new ReportPolicy(),
            Window = new WateringWindow(new TimeOnly(20, 30), new TimeOnly(6, 15)),
            PumpCapacityLPerMin = 3000,
            Weather = new WeatherSetup { Stations = [], Gauges = [new Gauge("shop", "shop"), new Gauge("east", null)] },
            Soils = new Dictionary<string, Soil>(StringComparer.Ordinal) { ["sand"] = sand, ["loam"] = loam },
            Areas = areas,
            Controllers =
            [
                Box("A", "behind the second tee", 1, PercentApplies.Program, ["Greens 1-3", "Fairways 1-3"]),
                Box("B", "=HYPERLINK(\"x\")", 2, PercentApplies.Program, ["Greens 4-6", "Fairways 4-6", "Tees"]),
                Box("C", "barn wall", 3, PercentApplies.Controller, ["Range north", "Range south"]),
                Box("D", "cart shed", 4, PercentApplies.None, ["Practice green"]),
                Box("E", "", 5, PercentApplies.Program, ["Fairways 7-9", "Nursery"]),
            ],
            Stations = [],
        };
    }

    private static Area Ground(string name, Soil soil, double rootDepthM, double allowable) => new()
    {
        Name = name,
        Grass = "cool_season",
        Kc = Enumerable.Repeat(0.85, 12).ToArray(),
        RootDepthM = rootDepthM,
        Soil = soil,
        AllowableDepletion = allowable,
        Efficiency = 0.75,
    };

    private static Controller Box(string id, string place, int route, PercentApplies applies, string[] programs) => new()
    {
        Id = id,
        Place = place,
        Route = route,
        Applies = applies,
        Programs = [.. programs.Select((name, i) => new WateringProgram
        {
            Id = "P" + (char)('1' + i),
            Name = name,
            Starts = [new TimeOnly(21, 30)],
            Days = WaterDays.Every,
        })],
    };
}
