using System.Globalization;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>The example site of Data/example-site/site, built by hand: needs no reader of files.</summary>
internal static class ExampleSite
{
    private const double MmPerInch = 25.4;
    private const double MmPerMPerInchPerFoot = 1000.0 / 12;

    public static SiteClock Clock { get; } = new(TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"));

    public static string DataFile(string name) => Path.Combine(AppContext.BaseDirectory, "Data", "example-site", name);

    public static Site Build()
    {
        var soils = new Dictionary<string, Soil>(StringComparer.Ordinal)
        {
            ["sand-rootzone"] = Soil("sand-rootzone", 1.0, 18, null, 0.6, 0.35),
            ["silt-loam"] = Soil("silt-loam", 2.0, 31, 69, 0.35, 0.25),
            ["clay-loam"] = Soil("clay-loam", 2.1, 34, 79, 0.2, 0.14),
        };
        double[] fairwayKc = [0.61, 0.64, 0.75, 1.04, 0.95, 0.88, 0.94, 0.86, 0.74, 0.75, 0.69, 0.60];
        var greens = Area("greens", Same(0.80), 6, soils["sand-rootzone"], 0.50, 0.80);
        var tees = Area("tees", Same(0.80), 6, soils["sand-rootzone"], 0.50, 0.4 + (0.6 * 0.70));
        var fairways = Area("fairways", fairwayKc, 8, soils["silt-loam"], 0.45, 0.4 + (0.6 * 0.65)) with { LeaveEmpty = 0.40, Replace = 0.85 };
        var rough = Area("rough", Same(0.70), 10, soils["clay-loam"], 0.60, 0.70) with { RunAt = 1 };
        Area[] areas = [greens, tees, fairways, rough];

        return new Site
        {
            Name = "Tamarack Flats Municipal",
            LatitudeDeg = 44.21,
            LongitudeDeg = -98.32,
            ElevationM = 1290 * 0.3048,
            Clock = Clock,
            Units = UnitSystem.Us,
            Start = new(2026, 6, 1),
            StartSoil = StartSoil.Full,
            Report = new ReportPolicy(),
            Window = new(new(20, 0), new(6, 30)),
            PumpCapacityLPerMin = 850 * 3.785411784,
            Weather = new WeatherSetup { Stations = [], Gauges = [new Gauge("yard", "yard")] },
            Soils = soils,
            Areas = areas,
            Controllers = Controllers(),
            Stations = [.. File.ReadLines(DataFile("site/stations.csv")).Skip(1).Select(line => ReadStation(line, areas))],
        };
    }

    private static List<Controller> Controllers() =>
    [
        new()
        {
            Id = "C1",
            Place = "left of the third tee",
            Route = 1,
            Programs =
            [
                new() { Id = "P1", Name = "Fairways 1-3", Starts = [new(21, 30)], Days = new WaterDays.Weekdays([DayOfWeek.Wednesday, DayOfWeek.Friday, DayOfWeek.Sunday]) },
                new() { Id = "P2", Name = "Greens", Starts = [new(4, 40)], Days = WaterDays.Every },
                new() { Id = "P3", Name = "Rough 1-3", Starts = [new(23, 50)], Days = new WaterDays.EveryNth(3, new(2026, 6, 2)) },
            ],
        },
        new()
        {
            Id = "C2",
            Place = "pump house fence",
            Route = 2,
            PercentMin = 10,
            PercentMax = 150,
            PercentStep = 10,
            Programs =
            [
                new() { Id = "P1", Name = "Fairways 4-6", Starts = [new(22, 15)], Days = new WaterDays.OddDays() },
                new()
                {
                    Id = "P2",
                    Name = "Greens and tees",
                    Starts = [new(3, 30), new(5, 20)],
                    Days = WaterDays.Every,
                    Visit = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]),
                },
            ],
        },
    ];

    private static Soil Soil(string name, double inchesPerFoot, double capacity, double? curveNumber, double intakeInH, double storageIn) => new()
    {
        Name = name,
        AvailableWaterMmPerM = inchesPerFoot * MmPerMPerInchPerFoot,
        FieldCapacityPercent = capacity,
        CurveNumber = curveNumber,
        IntakeRate = new ApplicationRate(intakeInH * MmPerInch),
        SurfaceStorage = new Depth(storageIn * MmPerInch),
    };

    private static Area Area(string name, double[] kc, double rootIn, Soil soil, double depletion, double efficiency) => new()
    {
        Name = name,
        Grass = "cool_season",
        Kc = kc,
        RootDepthM = rootIn * MmPerInch / 1000,
        Soil = soil,
        AllowableDepletion = depletion,
        Efficiency = efficiency,
    };

    private static double[] Same(double kc) => [.. Enumerable.Repeat(kc, 12)];

    private static Station ReadStation(string line, Area[] areas)
    {
        var cells = line.Split(',');
        var minutes = new Dictionary<string, double>(StringComparer.Ordinal);
        for (var program = 1; program <= 3; program++)
        {
            if (cells[3 + program].Length > 0)
            {
                minutes[$"P{program}"] = Number(cells[3 + program]);
            }
        }

        return new Station
        {
            Key = new(cells[0], cells[1]),
            Name = cells[2],
            Area = areas.Single(a => a.Name.Is(cells[3])),
            BaseMinutes = minutes,
            Rate = new ApplicationRate(Number(cells[7]) * MmPerInch),
            RateKnown = RateKnown.Catalogue,
            FlowLPerMin = Number(cells[9]) * 3.785411784,
            GroundM2 = Number(cells[10]) * 0.09290304,
            Exposure = Number(cells[11]),
            Gauge = "yard",
        };
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
