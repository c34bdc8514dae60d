using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Irrigation;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// A course of round numbers, so that an advice can be worked out by hand: UTC, ETo 5 mm a day all of which is drawn between 05:00 and
/// 20:00, K = 1, TAW 100 mm, allowable depletion 50 mm, nothing left empty, 10 mm of water an hour, one start each night at 22:00, sheet at 05:00,
/// round by 13:00, daily visits. The morning is Monday 4 May 2026.
/// </summary>
internal sealed record SmallCourse
{
    public static DateOnly Monday { get; } = new(2026, 5, 4);

    public static Area Area { get; } = OneZone.Area with { LeaveEmpty = 0 };

    public static Controller Box { get; } = OneZone.Box with { Programs = [EveryNight("P1", "22:00")] };

    public Controller Controller { get; init; } = Box;

    public ReportPolicy Report { get; init; } = new();

    public TimeZoneInfo Zone { get; init; } = TimeZoneInfo.Utc;

    public DateOnly Date { get; init; } = Monday;

    public StartSoil StartSoil { get; init; } = StartSoil.Full;

    public required IReadOnlyList<Station> Stations { get; init; }

    /// <summary>Days before the morning; none unless a test needs them.</summary>
    public IReadOnlyList<WeatherDay> Weather { get; init; } = [];

    /// <summary>Depletion of each station at 00:00 of the first day, mm, in their order.</summary>
    public required IReadOnlyList<double> DepletionMm { get; init; }

    public IReadOnlyList<LogEntry> Log { get; init; } = [];

    public IReadOnlyList<RainFall> RainSinceMidnight { get; init; } = [];

    public IReadOnlyList<ForecastDay> Forecast { get; init; } = [];

    public DateTimeOffset? ForecastIssued { get; init; }

    public ForecastRain ForecastRain { get; init; } = ForecastRain.OnlyNoted;

    public DateTimeOffset? NewestReading { get; init; }

    public TimeOnly At { get; init; } = new(5, 0);

    public EtoSoFar? EtoSoFar { get; init; }

    public WateringWindow? Window { get; init; }

    public double? Pump { get; init; }

    public IReadOnlyList<string> Priority { get; init; } = [];

    public IReadOnlyList<Restriction> Restrictions { get; init; } = [];

    public IReadOnlyList<StationGroup> NotTogether { get; init; } = [];

    public IReadOnlyList<IssuedSheet> Sheets { get; init; } = [];

    /// <summary>Whatever else a test's site has.</summary>
    public Func<Site, Site> Described { get; init; } = site => site;

    /// <summary>Of the mast.</summary>
    public IReadOnlyList<Reading> NightReadings { get; init; } = [];

    public static WateringProgram EveryNight(string id, params string[] starts) => new()
    {
        Id = id,
        Starts = [.. starts.Select(s => TimeOnly.ParseExact(s, "HH:mm", null))],
        Days = WaterDays.Every,
    };

    /// <summary>An hour at 100 % gives 10 mm.</summary>
    public static Station Station(int number, double? groundM2 = 100, Area? area = null, double minutes = 60, params string[] programs) => new()
    {
        Key = new("C1", number.ToString(System.Globalization.CultureInfo.InvariantCulture)),
        Area = area ?? Area,
        BaseMinutes = (programs.Length > 0 ? programs : ["P1"]).ToDictionary(p => p, _ => minutes, StringComparer.Ordinal),
        Rate = new(10),
        GroundM2 = groundM2,
        Gauge = "yard",
    };

    public static SmallCourse OneStation(double depletionMm, Area? area = null, double minutes = 60) =>
        new() { Stations = [Station(1, area: area, minutes: minutes)], DepletionMm = [depletionMm] };

    public Site Site => Described(Plain);

    private Site Plain => OneZone.Site(Area) with
    {
        Clock = new(Zone),
        StartSoil = StartSoil,
        Report = Report,
        Controllers = [Controller],
        Restrictions = Restrictions,
        NotTogether = NotTogether,
        Window = Window,
        PumpCapacityLPerMin = Pump,
        Priority = Priority,
        Stations = Stations,
        Areas = [.. Stations.Select(s => s.Area).Distinct()],
        Weather = new WeatherSetup { Stations = NightReadings.Count > 0 ? [Mast] : [], Gauges = [new Gauge("yard", null), .. Stations.Select(s => s.Gauge).Distinct().Where(g => g is not "yard").Select(g => new Gauge(g, null))], Normals = new([.. Enumerable.Repeat(5.0, 12)], []), ForecastRain = ForecastRain },
    };

    private static WeatherSource Mast { get; } = new()
    {
        Id = "mast",
        Files = "mast*",
        Format = "csv",
        Time = new("time", null, "yyyy-MM-dd HH:mm", StampClock.Utc, StampMeaning.End),
        Interval = TimeSpan.FromHours(1),
        Columns = new Dictionary<WeatherQuantity, MappedColumn>(),
    };

    public MorningSheet Sheet() => MorningCalculation.Run(Inputs());

    public MorningInputs Inputs()
    {
        var site = Site;
        var asOf = site.Clock.ToInstant(Date, At);
        return new MorningInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            Date = Date,
            AsOf = asOf,
            Weather = Weather,
            RainSinceMidnight =
            [
                new("yard", RainSinceMidnight.Sum(r => r.Mm), RainSinceMidnight, RainBasis.Measured, 0),
                .. Stations.Select(s => s.Gauge).Distinct().Where(g => g is not "yard").Select(g => new GaugeDay(g, 0, [], RainBasis.Measured, 0)),
            ],
            NewestReadingEnd = NewestReading ?? asOf,
            EtoSoFar = EtoSoFar,
            Forecast = Forecast,
            NightReadings = NightReadings,
            NewestReadingStation = NightReadings.Count > 0 ? "mast" : "",
            ForecastIssued = ForecastIssued,
            Log = Log,
            Sheets = Sheets,
            StartState = new SoilState(Date.AddDays(-Weather.Count), Stations.Zip(DepletionMm).ToDictionary(x => x.First.Key, x => x.Second)),
        };
    }

    /// <summary>The advice for program P1.</summary>
    public ProgramAdvice Advice() => Sheet().Programs.First(p => p.Key.Program is "P1");
}
