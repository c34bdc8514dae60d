using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The names of weather quantities as site.yaml and the reports write them.</summary>
public static class QuantityName
{
    public static string Of(WeatherQuantity quantity) => quantity switch
    {
        WeatherQuantity.AirTemperature => "air_temperature",
        WeatherQuantity.AirTemperatureMax => "air_temperature_max",
        WeatherQuantity.AirTemperatureMin => "air_temperature_min",
        WeatherQuantity.RelativeHumidity => "relative_humidity",
        WeatherQuantity.RelativeHumidityMax => "relative_humidity_max",
        WeatherQuantity.RelativeHumidityMin => "relative_humidity_min",
        WeatherQuantity.DewPoint => "dew_point",
        WeatherQuantity.WindSpeed => "wind_speed",
        WeatherQuantity.SolarRadiation => "solar_radiation",
        WeatherQuantity.Sunshine => "sunshine",
        WeatherQuantity.Rain => "rain",
        WeatherQuantity.ReferenceEt => "reference_et",
        WeatherQuantity.RainChance => "rain_chance",
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a weather quantity."),
    };
}
