namespace DailyAdjust.Core.Sites;

/// <summary>Where the site's weather comes from.</summary>
public sealed record WeatherSetup
{
    /// <summary>In order of preference.</summary>
    public required IReadOnlyList<WeatherSource> Stations { get; init; }

    /// <summary>At least one; the first is the one that areas use when they name none.</summary>
    public required IReadOnlyList<Gauge> Gauges { get; init; }

    public MonthlyNormals? Normals { get; init; }
}

/// <summary>One weather station and how its files are read.</summary>
public sealed record WeatherSource
{
    public required string Id { get; init; }

    /// <summary>File name pattern with * and ?, matched without regard to case.</summary>
    public required string Files { get; init; }

    /// <summary>"csv" (column map).</summary>
    public required string Format { get; init; }

    public required TimeColumn Time { get; init; }

    /// <summary>Length of one interval: 1 to 60 minutes, or one day.</summary>
    public required TimeSpan Interval { get; init; }

    /// <summary>Texts that mean "missing"; the empty cell always does.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [];

    /// <summary>Field delimiter; null = found from the header.</summary>
    public char? Delimiter { get; init; }

    /// <summary>Whether numbers are written with a decimal comma.</summary>
    public bool DecimalComma { get; init; }

    /// <summary>Quantity to column.</summary>
    public required IReadOnlyDictionary<WeatherQuantity, MappedColumn> Columns { get; init; }

    /// <summary>Height of the anemometer above ground, m, 0.1 to 100.</summary>
    public double WindHeightM { get; init; } = 2;

    /// <summary>Near a coast: the radiation estimate from temperatures uses 0.19 instead of 0.16 ([FAO56] eq. 50, p. 60).</summary>
    public bool Coastal { get; init; }

    /// <summary>Use the station's own ETo column instead of computing it.</summary>
    public bool UseSuppliedEto { get; init; }

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
public sealed record MappedColumn(string Header, string? Unit);

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
}

/// <summary>A rain gauge: a weather station's rain, or one that a person reads.</summary>
/// <param name="Id">Its name.</param>
/// <param name="StationId">The weather station whose rain it is; null = read by hand (logbook).</param>
public sealed record Gauge(string Id, string? StationId);

/// <summary>Long-term monthly means.</summary>
/// <param name="EtoMmPerDay">12 values, mm/day, January first.</param>
/// <param name="RainMm">12 monthly totals, mm; empty where not given.</param>
public sealed record MonthlyNormals(IReadOnlyList<double> EtoMmPerDay, IReadOnlyList<double> RainMm);
