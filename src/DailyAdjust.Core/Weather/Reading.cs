using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// What one weather station reported for one interval (1 to 60 minutes, or a day), in metric units. NaN = missing; missing is never zero.
/// </summary>
public sealed record Reading
{
    /// <summary>UTC.</summary>
    public required DateTimeOffset Begin { get; init; }

    /// <summary>UTC, after <see cref="Begin"/>. For daily readings: Begin and End are those of the site's calendar day.</summary>
    public required DateTimeOffset End { get; init; }

    /// <summary>Mean air temperature, °C.</summary>
    public double AirTemperatureC { get; init; } = double.NaN;

    /// <summary>Highest and lowest air temperature of the interval, °C (daily readings; finer ones where the file has them).</summary>
    public double AirTemperatureMaxC { get; init; } = double.NaN;

    public double AirTemperatureMinC { get; init; } = double.NaN;

    /// <summary>Mean relative humidity, %.</summary>
    public double RelativeHumidityPercent { get; init; } = double.NaN;

    public double RelativeHumidityMaxPercent { get; init; } = double.NaN;

    public double RelativeHumidityMinPercent { get; init; } = double.NaN;

    public double DewPointC { get; init; } = double.NaN;

    /// <summary>Mean wind speed at the anemometer's own height, m/s.</summary>
    public double WindSpeedMPerS { get; init; } = double.NaN;

    /// <summary>Solar radiation received in the interval, MJ/m² (a mean of W/m² times the interval's seconds / 10⁶).</summary>
    public double SolarRadiationMJPerM2 { get; init; } = double.NaN;

    /// <summary>Hours of bright sunshine in the interval.</summary>
    public double SunshineH { get; init; } = double.NaN;

    /// <summary>Rain in the interval, mm.</summary>
    public double RainMm { get; init; } = double.NaN;

    /// <summary>A running total of rain at the interval's end, which now and then begins at 0 again, mm.</summary>
    public double RainCounterMm { get; init; } = double.NaN;

    /// <summary>The station's own reference ET in the interval, mm.</summary>
    public double ReferenceEtMm { get; init; } = double.NaN;

    /// <summary>Forecasts only: how likely rain is in the interval, %.</summary>
    public double RainChancePercent { get; init; } = double.NaN;

    /// <summary>What the source said about its values beside the numbers, in the order of the quantities.</summary>
    public IReadOnlyList<ValueMark> Marks { get; init; } = [];
}

/// <summary>What a source said about one value.</summary>
/// <param name="Quantity">Of which.</param>
/// <param name="Kind">What it said.</param>
/// <param name="Raw">Value and flag as the file has them, or the window in words ("24 h to 07:00 of the next day").</param>
public sealed record ValueMark(WeatherQuantity Quantity, MarkKind Kind, string Raw);

public enum MarkKind
{
    /// <summary>Too little to measure: counts as 0.</summary>
    Trace,

    /// <summary>A total of several days: not used, no day has it.</summary>
    SeveralDays,

    /// <summary>Failed a check of its publisher: not used.</summary>
    FailedAtSource,

    /// <summary>Estimated, or said to be uncertain, by its publisher: used.</summary>
    EstimatedAtSource,

    /// <summary>Said to be incomplete by its publisher: not used.</summary>
    IncompleteAtSource,

    /// <summary>Observed over another day than the site's calendar day: used for the day that most of it belongs to.</summary>
    OtherWindow,
}
