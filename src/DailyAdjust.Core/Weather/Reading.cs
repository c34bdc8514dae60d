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

    /// <summary>The station's own reference ET in the interval, mm.</summary>
    public double ReferenceEtMm { get; init; } = double.NaN;
}
