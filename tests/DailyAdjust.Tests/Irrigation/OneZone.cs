using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>A site of one station, by hand: UTC, Kc 1, efficiency 1, no limit of intake, no runoff, unless a test says otherwise.</summary>
internal static class OneZone
{
    public static DateOnly First { get; } = new(2026, 5, 1);

    public static StationKey Key { get; } = new("C1", "1");

    public static Place Here { get; } = new(PlaceKind.Station, "C1", "1");

    public static Area Area { get; } = new()
    {
        Name = "ground",
        Grass = "any",
        Kc = Kc(1),
        RootDepthM = 1,
        Soil = new Soil { Name = "soil", AvailableWaterMmPerM = 100 },
        AllowableDepletion = 0.5,
        Efficiency = 1,
    };

    public static IReadOnlyList<double> Kc(double all) => [.. Enumerable.Repeat(all, 12)];

    public static Site Site(Area area, double rateMmPerHour = 10, double baseMinutes = 30, Controller? controller = null) => new()
    {
        Name = "one zone",
        LatitudeDeg = 30,
        LongitudeDeg = 0,
        ElevationM = 0,
        Clock = new(TimeZoneInfo.Utc),
        Units = UnitSystem.Metric,
        Start = First,
        StartSoil = StartSoil.Full,
        Report = new ReportPolicy(),
        Weather = new WeatherSetup { Stations = [], Gauges = [new Gauge("yard", null)] },
        Soils = new Dictionary<string, Soil>(StringComparer.Ordinal) { [area.Soil.Name] = area.Soil },
        Areas = [area],
        Controllers = [controller ?? Box],
        Stations =
        [
            new Station
            {
                Key = Key,
                Area = area,
                BaseMinutes = new Dictionary<string, double>(StringComparer.Ordinal) { ["P1"] = baseMinutes },
                Rate = new ApplicationRate(rateMmPerHour),
                GroundM2 = 1000,
                Gauge = "yard",
            },
        ],
    };

    /// <summary>Its only program starts at 02:00 on the 31st: not within a test unless asked for.</summary>
    public static Controller Box { get; } = new()
    {
        Id = "C1",
        Programs = [new WateringProgram { Id = "P1", Starts = [new(2, 0)], Days = new WaterDays.EveryNth(30, First.AddDays(29)) }],
    };

    public static Controller EveryNight { get; } = Box with { Programs = [Box.Programs[0] with { Days = WaterDays.Every }] };

    public static WeatherDay Day(int n, double etoMm, double rainMm = 0)
    {
        var date = First.AddDays(n);
        IReadOnlyList<RainFall> falls = rainMm > 0 ? [new(new DateTimeOffset(date.ToDateTime(TimeOnly.MinValue), TimeSpan.Zero), rainMm)] : [];
        return new WeatherDay { Date = date, Station = "yard", EtoMm = etoMm, Basis = EtoBasis.Daily, Rain = [new("yard", rainMm, falls, RainBasis.Measured, 0)] };
    }

    public static LogEntry Entry(int n, TimeOnly? time, LogKind kind, double? value, LogUnit unit) =>
        new() { Time = new(First.AddDays(n), time), Kind = kind, Where = Here, Value = value, Unit = unit };

    public static IReadOnlyList<ZoneDay> Run(Site site, IReadOnlyList<WeatherDay> weather, double depletionMm = 0, IReadOnlyList<LogEntry>? log = null) =>
        Run([new SiteVersion(First, site)], weather, depletionMm, log ?? []);

    public static IReadOnlyList<ZoneDay> Run(IReadOnlyList<SiteVersion> versions, IReadOnlyList<WeatherDay> weather, double depletionMm, IReadOnlyList<LogEntry> log) =>
        Balance.Run(new BalanceInputs
        {
            Versions = versions,
            Weather = weather,
            Log = log,
            StartState = new(First, new Dictionary<StationKey, double> { [Key] = depletionMm }),
        }).Days;
}
