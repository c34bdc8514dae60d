using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Weather;

/// <summary>A site with weather stations and gauges and nothing else, and readings for it.</summary>
internal sealed record WeatherScene
{
    public double LatitudeDeg { get; init; } = 44.21;

    public double LongitudeDeg { get; init; } = -98.32;

    public double ElevationM { get; init; } = 1290 * 0.3048;

    public string Zone { get; init; } = "America/Chicago";

    public IReadOnlyList<WeatherSource> Stations { get; init; } = [Source("yard")];

    public IReadOnlyList<Gauge> Gauges { get; init; } = [new("yard", "yard")];

    public MonthlyNormals? Normals { get; init; }

    public SiteClock Clock => new(TimeZoneInfo.FindSystemTimeZoneById(Zone));

    public Site Site => new()
    {
        Name = "Scene",
        LatitudeDeg = LatitudeDeg,
        LongitudeDeg = LongitudeDeg,
        ElevationM = ElevationM,
        Clock = Clock,
        Units = UnitSystem.Metric,
        Start = new DateOnly(2026, 1, 1),
        StartSoil = StartSoil.Full,
        Report = new ReportPolicy(),
        Weather = new WeatherSetup { Stations = Stations, Gauges = Gauges, Normals = Normals },
        Soils = new Dictionary<string, Soil>(StringComparer.Ordinal),
        Areas = [],
        Controllers = [],
        Stations = [],
    };

    public static WeatherSource Source(string id, int minutes = 60) => new()
    {
        Id = id,
        Files = id + "-*.csv",
        Format = "csv",
        Time = new TimeColumn("Time", null, "yyyy-MM-dd HH:mm", StampClock.Local, StampMeaning.End),
        Interval = minutes == 0 ? TimeSpan.FromDays(1) : TimeSpan.FromMinutes(minutes),
        Columns = new Dictionary<WeatherQuantity, MappedColumn>(),

        // The steady weather of the scene is just what these checks look for.
        Accept = ["stuck", "clear_sky"],
    };

    /// <summary>Steady weather, whole days, in intervals of so many minutes; the sun shines at 600 W/m² between 7 and 17 h UTC-6.</summary>
    public IReadOnlyList<Reading> Steady(DateOnly from, DateOnly through, int minutes = 60, double rainMm = 0)
    {
        List<Reading> readings = [];
        var step = TimeSpan.FromMinutes(minutes);
        for (var begin = Clock.DayStart(from); begin < Clock.DayEnd(through); begin += step)
        {
            var hour = begin.ToOffset(TimeSpan.FromHours(-6)).Hour;
            readings.Add(new Reading
            {
                Begin = begin,
                End = begin + step,
                AirTemperatureC = hour is >= 7 and < 17 ? 26 : 16,
                RelativeHumidityPercent = 60,
                WindSpeedMPerS = 2.5,
                SolarRadiationMJPerM2 = hour is >= 7 and < 17 ? 600 * step.TotalSeconds / 1e6 : 0,
                RainMm = rainMm,
            });
        }

        return readings;
    }

    public IReadOnlyList<WeatherDay> Days(DateOnly from, DateOnly through, params (string Station, IReadOnlyList<Reading> Readings)[] readings) =>
        Days(from, through, [], readings);

    public IReadOnlyList<WeatherDay> Days(
        DateOnly from, DateOnly through, IReadOnlyList<LogEntry> log, params (string Station, IReadOnlyList<Reading> Readings)[] readings) =>
        WeatherDays.Compute(Inputs(from, through, log, readings));

    public WeatherDayInputs Inputs(
        DateOnly from, DateOnly through, IReadOnlyList<LogEntry> log, params (string Station, IReadOnlyList<Reading> Readings)[] readings) => new()
        {
            Versions = [new SiteVersion(new DateOnly(2026, 1, 1), Site)],
            From = from,
            Through = through,
            Readings = readings.ToDictionary(r => r.Station, r => r.Readings, StringComparer.Ordinal),
            Log = log,
            AsOf = Clock.DayEnd(through.AddDays(1)),
        };

    public static LogEntry Rain(string gauge, DateOnly date, string? clock, double mm, int ordinal = 0) => new()
    {
        Time = new LogTime(date, clock is null ? null : TimeOnly.ParseExact(clock, "HH:mm", System.Globalization.CultureInfo.InvariantCulture)),
        Kind = LogKind.Rain,
        Where = new Place(PlaceKind.Gauge, gauge, ""),
        Ordinal = ordinal,
        Value = mm,
        Unit = LogUnit.Mm,
    };
}
