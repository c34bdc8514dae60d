using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>A reading's value of one quantity as series are made of it: means as they are, sums as rates per hour.</summary>
internal static class SeriesValue
{
    /// <summary>1 MJ/m² in an hour, W/m².</summary>
    public const double WPerM2OfMJPerM2Hour = 1e6 / 3600;

    /// <summary>NaN = missing; where a mean is missing, the middle of the extremes.</summary>
    public static double Of(Reading r, WeatherQuantity quantity) => quantity switch
    {
        WeatherQuantity.AirTemperature => double.IsNaN(r.AirTemperatureC) ? (r.AirTemperatureMaxC + r.AirTemperatureMinC) / 2 : r.AirTemperatureC,
        WeatherQuantity.AirTemperatureMax => r.AirTemperatureMaxC,
        WeatherQuantity.AirTemperatureMin => r.AirTemperatureMinC,
        WeatherQuantity.RelativeHumidity => double.IsNaN(r.RelativeHumidityPercent)
            ? (r.RelativeHumidityMaxPercent + r.RelativeHumidityMinPercent) / 2
            : r.RelativeHumidityPercent,
        WeatherQuantity.DewPoint => r.DewPointC,
        WeatherQuantity.WindSpeed => r.WindSpeedMPerS,
        WeatherQuantity.SolarRadiation => r.SolarRadiationMJPerM2 / (r.End - r.Begin).TotalHours,
        WeatherQuantity.Sunshine => r.SunshineH / (r.End - r.Begin).TotalHours,
        WeatherQuantity.ReferenceEt => r.ReferenceEtMm / (r.End - r.Begin).TotalHours,
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No series is made of it."),
    };

    /// <summary>The reading without all that the quantity's sensor says.</summary>
    public static Reading Without(Reading r, WeatherQuantity quantity) => quantity switch
    {
        WeatherQuantity.AirTemperature => r with { AirTemperatureC = double.NaN, AirTemperatureMaxC = double.NaN, AirTemperatureMinC = double.NaN },
        WeatherQuantity.AirTemperatureMax => r with { AirTemperatureMaxC = double.NaN },
        WeatherQuantity.AirTemperatureMin => r with { AirTemperatureMinC = double.NaN },
        WeatherQuantity.RelativeHumidity => r with
        {
            RelativeHumidityPercent = double.NaN,
            RelativeHumidityMaxPercent = double.NaN,
            RelativeHumidityMinPercent = double.NaN,
        },
        WeatherQuantity.DewPoint => r with { DewPointC = double.NaN },
        WeatherQuantity.WindSpeed => r with { WindSpeedMPerS = double.NaN },
        WeatherQuantity.SolarRadiation => r with { SolarRadiationMJPerM2 = double.NaN },
        WeatherQuantity.Rain => r with { RainMm = double.NaN },
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No check of series judges it."),
    };
}
