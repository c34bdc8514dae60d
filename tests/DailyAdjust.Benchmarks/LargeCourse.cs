using System.Globalization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Benchmarks;

/// <summary>
/// An invented course larger than any: 40 controllers with 4 programs of 36 stations each, every night, visited once a week, with a window and a pump. Not from the tests'
/// generator: of so many stations its pump would never be asked for too much, and many of its programs rest every other night, so that little would be left to mend.
/// </summary>
internal static class LargeCourse
{
    private const int Controllers = 40;
    private const int Programs = 4;
    private const int Stations = 36;

    public static DateOnly Monday { get; } = new(2026, 6, 8);

    /// <summary>Four starts an hour apart, so that programs of 36 short runs overlap, and a pump that some nights do not fit.</summary>
    public static Site Site()
    {
        var soil = new Soil { Name = "loam", AvailableWaterMmPerM = 155, SurfaceStorage = new Depth(0) };
        var area = new Area { Name = "turf", Grass = "invented", Kc = [.. Enumerable.Repeat(0.8, 12)], RootDepthM = 0.2, Soil = soil, AllowableDepletion = 0.5, Efficiency = 0.75 };
        var controllers = Enumerable.Range(1, Controllers).Select(Box).ToList();
        return new Site
        {
            Name = "Large course",
            LatitudeDeg = 41,
            LongitudeDeg = -93,
            ElevationM = 250,
            Clock = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById("America/Chicago")),
            Units = UnitSystem.Us,
            Start = new DateOnly(2026, 6, 1),
            StartSoil = StartSoil.Full,
            Report = new ReportPolicy(),
            Window = new WateringWindow(new(19, 0), new(6, 30)),
            PumpCapacityLPerMin = 3500,
            Weather = new WeatherSetup { Stations = [], Gauges = [new Gauge("yard", null)] },
            Soils = new Dictionary<string, Soil>(StringComparer.Ordinal) { ["loam"] = soil },
            Areas = [area],
            Controllers = controllers,
            Stations = [.. controllers.SelectMany(c => Enumerable.Range(1, Stations).Select(n => Head(c, n, area)))],
        };
    }

    public static AdviceContext Morning(Site site) => new(
        site,
        Monday,
        site.Clock.ToInstant(Monday, new(5, 0)),
        SettingHistory.Always([]),
        [],
        site.Stations.ToDictionary(s => s.Key, _ => 0.0),
        [],
        _ => 5,
        before: [],
        weatherOrders: []);

    private static Controller Box(int number) => new()
    {
        Id = "C" + number.ToString(CultureInfo.InvariantCulture),
        Route = number,
        MinutesStep = 0.1,
        Programs = [.. Enumerable.Range(0, Programs).Select(p => new WateringProgram
        {
            Id = "P" + (p + 1).ToString(CultureInfo.InvariantCulture),
            Starts = [new TimeOnly(19 + p, number % 4 * 15)],
            Days = WaterDays.Every,
            Visit = new VisitDays.Weekdays([DayOfWeek.Monday]),
        })],
    };

    /// <summary>In every program of its box, 1.3 to 2.2 minutes.</summary>
    private static Station Head(Controller controller, int number, Area area) => new()
    {
        Key = new(controller.Id, number.ToString(CultureInfo.InvariantCulture)),
        Area = area,
        BaseMinutes = controller.Programs.ToDictionary(p => p.Id, _ => 1.3 + (number % 10 * 0.1), StringComparer.Ordinal),
        Rate = new ApplicationRate(12),
        FlowLPerMin = 60 + number,
        GroundM2 = 500,
        Gauge = "yard",
    };
}
