namespace DailyAdjust.Core.Sites;

/// <summary>Where the site's weather comes from.</summary>
public sealed record WeatherSetup
{
    /// <summary>The forecast's id among the sources of files; no weather station has it.</summary>
    public const string ForecastId = "forecast";

    /// <summary>In order of preference.</summary>
    public required IReadOnlyList<WeatherSource> Stations { get; init; }

    /// <summary>At least one; the first is the one that areas use when they name none.</summary>
    public required IReadOnlyList<Gauge> Gauges { get; init; }

    public MonthlyNormals? Normals { get; init; }

    /// <summary>Where forecasts come from; null = there is none.</summary>
    public WeatherSource? Forecast { get; init; }

    public ForecastRain ForecastRain { get; init; } = ForecastRain.OnlyNoted;

    /// <summary>The weather station of an id; null = there is none.</summary>
    public WeatherSource? StationOf(string? id) => Stations.FirstOrDefault(s => string.Equals(s.Id, id, StringComparison.Ordinal));

    /// <summary>Everything that has files: the stations in their order, and the forecast after them.</summary>
    public IEnumerable<WeatherSource> Sources => Forecast is null ? Stations : Stations.Append(Forecast);
}

/// <summary>One weather station and how its files are read.</summary>
public sealed record WeatherSource
{
    public required string Id { get; init; }

    /// <summary>File name pattern with * and ?, matched without regard to case.</summary>
    public required string Files { get; init; }

    /// <summary>"csv" (column map), or the name of a public format, which knows its own columns, units, clock and interval.</summary>
    public required string Format { get; init; }

    /// <summary>Which station is meant in a file that has several; null = the file has one.</summary>
    public string? StationCode { get; init; }

    /// <summary>When an observer reads a daily station: its day then ends at that time of its date; null = as the format says.</summary>
    public TimeOnly? ObservedAt { get; init; }

    public required TimeColumn Time { get; init; }

    /// <summary>Length of one interval: 1 to 60 minutes, or one day.</summary>
    public required TimeSpan Interval { get; init; }

    /// <summary>Texts that mean "missing"; the empty cell always does.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>Field delimiter; null = found from the header.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Whether numbers are written with a decimal comma.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>Units stand in the line below the header.</summary>
    public bool UnitsBelow { get; init; }

    /// <summary>Quantity to column.</summary>
    public required IReadOnlyDictionary<WeatherQuantity, MappedColumn> Columns { get; init; }

    /// <summary>Height of the anemometer above ground, m, 0.1 to 100.</summary>
    public double WindHeightM { get; init; } = 2;

    /// <summary>Near a coast: the radiation estimate from temperatures uses 0.19 instead of 0.16 ([FAO56] eq. 50, p. 60).</summary>
    public bool Coastal { get; init; }

    /// <summary>Use the station's own ETo column instead of computing it.</summary>
    public bool UseSuppliedEto { get; init; }

    /// <summary>Where it stands, if the site says so: degrees, north and east positive, and m above sea level.</summary>
    public double? LatitudeDeg { get; init; }

    public double? LongitudeDeg { get; init; }

    public double? ElevationM { get; init; }

    /// <summary>Checks that are overruled for it: a check's name, or that and a quantity ("stuck wind_speed").</summary>
    public IReadOnlyList<string> Accept { get; init; } = [];

    /// <summary>A folder whose files are read where they lie; null = the inbox alone.</summary>
    public string? Folder { get; init; }

    /// <summary>Where its files are fetched from; null = nowhere.</summary>
    public Pull? Pull { get; init; }

    /// <summary>Its files tell of days to come; nothing in them was measured.</summary>
    public bool IsForecast => string.Equals(Id, WeatherSetup.ForecastId, StringComparison.Ordinal);

    public bool IsDaily => Interval == TimeSpan.FromDays(1);
}

public enum StampMeaning
{
    /// <summary>The time stands at the end of its interval.</summary>
    End,

    /// <summary>The time stands at the start of its interval.</summary>
    Start,
}

public enum StampClock
{
    /// <summary>The site's clock, with summer time.</summary>
    Local,

    /// <summary>The site's standard time all year.</summary>
    Standard,

    Utc,
}

/// <summary>The column(s) that carry the time of a row.</summary>
/// <param name="Column">Header of the time (or date) column.</param>
/// <param name="TimeOfDayColumn">Header of a separate time-of-day column, or null.</param>
/// <param name="Pattern">Exact .NET date pattern; where two columns, the pattern of both joined by one blank.</param>
/// <param name="Clock">Which clock wrote it.</param>
/// <param name="Stamp">Start or end of the interval.</param>
public sealed record TimeColumn(string Column, string? TimeOfDayColumn, string Pattern, StampClock Clock, StampMeaning Stamp);

/// <summary>A column by its header, and its unit where the header does not say it in brackets.</summary>
/// <param name="Header">As the file has it.</param>
/// <param name="Unit">Null = the header says it.</param>
/// <param name="Counter">Rain only: the column is a running total, which now and then begins at 0 again.</param>
public sealed record MappedColumn(string Header, string? Unit, bool Counter = false);

/// <summary>What a weather file can carry. In site.yaml written with underscores: air_temperature.</summary>
public enum WeatherQuantity
{
    AirTemperature,
    AirTemperatureMax,
    AirTemperatureMin,
    RelativeHumidity,
    RelativeHumidityMax,
    RelativeHumidityMin,
    DewPoint,
    WindSpeed,
    SolarRadiation,
    Sunshine,
    Rain,
    ReferenceEt,

    /// <summary>Forecasts only: how likely rain is, %.</summary>
    RainChance,
}

/// <summary>A rain gauge: a weather station's rain, or one that a person reads.</summary>
/// <param name="Id">Its name.</param>
/// <param name="StationId">The weather station whose rain it is; null = read by hand (logbook).</param>
/// <param name="SubstituteId">The gauge that counts on days on which nothing is known of this one; null = none.</param>
public sealed record Gauge(string Id, string? StationId, string? SubstituteId = null);

/// <summary>What forecast rain may do: be noted on the sheet, or let a program skip whose ground can wait.</summary>
/// <param name="MaySkip">It may.</param>
/// <param name="LeastChancePercent">The least chance with which it may, %.</param>
/// <param name="LeastAmountMm">The least amount with which it may, mm in a day.</param>
public sealed record ForecastRain(bool MaySkip, double LeastChancePercent, double LeastAmountMm)
{
    public static ForecastRain OnlyNoted { get; } = new(false, 0, 0);
}

/// <summary>How a source's files are fetched over HTTP or HTTPS.</summary>
public sealed record Pull
{
    /// <summary>With date placeholders in braces, in the site's time: {yyyyMMdd}.</summary>
    public required string Url { get; init; }

    /// <summary>The name under which the file is taken in, with the same placeholders; the source's pattern must fit it.</summary>
    public required string File { get; init; }

    /// <summary>How often.</summary>
    public required TimeSpan Every { get; init; }

    /// <summary>With a date in the address: how many days before today are fetched again, 0 to 30.</summary>
    public int DaysBack { get; init; }

    /// <summary>Name to value; ${NAME} in a value stands for an environment variable, so that no secret stands in a file.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Headers { get; init; } = [];

    /// <summary>The longest that one answer may take.</summary>
    public TimeSpan Timeout { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>The largest answer that is taken, bytes.</summary>
    public long LargestBytes { get; init; } = 20_000_000;
}

/// <summary>Long-term monthly means.</summary>
/// <param name="EtoMmPerDay">12 values, mm/day, January first.</param>
/// <param name="RainMm">12 monthly totals, mm; empty where not given.</param>
public sealed record MonthlyNormals(IReadOnlyList<double> EtoMmPerDay, IReadOnlyList<double> RainMm);
