using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Readings;

namespace DailyAdjust.Files.Guess;

/// <summary>Which numbers a column can hold at all, in any weather. Common practice: wide enough that only marks and wrong units lie outside.</summary>
internal static class Possible
{
    /// <param name="value">As the file writes it.</param>
    /// <param name="counter">A running total of rain.</param>
    public static bool Is(double value, WeatherQuantity quantity, Unit unit, TimeSpan interval, bool counter)
    {
        var metric = new QuantityUnit(quantity, unit).ToReading(value, interval);
        var (least, most) = quantity switch
        {
            WeatherQuantity.AirTemperature or WeatherQuantity.AirTemperatureMax or WeatherQuantity.AirTemperatureMin => (-70.0, 60.0),
            WeatherQuantity.DewPoint => (-80, 40),
            WeatherQuantity.RelativeHumidity or WeatherQuantity.RelativeHumidityMax or WeatherQuantity.RelativeHumidityMin => (-5, 115),
            WeatherQuantity.WindSpeed => (0, 70),
            WeatherQuantity.SolarRadiation => interval > TimeSpan.FromHours(1) ? (-1, 50) : (-0.05 * interval.TotalHours, 1.7e-3 * interval.TotalSeconds),
            WeatherQuantity.Sunshine => (0, interval > TimeSpan.FromHours(1) ? 24 : 1.1 * interval.TotalHours),
            WeatherQuantity.Rain => (0, counter ? 20_000 : interval > TimeSpan.FromHours(1) ? 600 : 200),
            WeatherQuantity.ReferenceEt => (-1, 25),
            _ => (0, 100),
        };
        return metric >= least && metric <= most;
    }
}
