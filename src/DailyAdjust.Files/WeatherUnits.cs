using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files;

/// <summary>Which units a weather column may be written in.</summary>
public static class WeatherUnits
{
    /// <summary>Kinds of unit that a quantity may come in, the usual one first.</summary>
    /// <param name="quantity">What the column holds.</param>
    /// <param name="daily">Whether a row is a whole day: a depth per day is then the day's depth.</param>
    public static IReadOnlyList<UnitKind> Kinds(WeatherQuantity quantity, bool daily) => quantity switch
    {
        WeatherQuantity.AirTemperature or WeatherQuantity.AirTemperatureMax or WeatherQuantity.AirTemperatureMin
            or WeatherQuantity.DewPoint => [UnitKind.Temperature],
        WeatherQuantity.RelativeHumidity or WeatherQuantity.RelativeHumidityMax or WeatherQuantity.RelativeHumidityMin
            or WeatherQuantity.RainChance => [UnitKind.Percent],
        WeatherQuantity.WindSpeed => [UnitKind.Speed, UnitKind.WindRun],
        WeatherQuantity.SolarRadiation => [UnitKind.RadiationPower, UnitKind.RadiationEnergy],
        WeatherQuantity.Sunshine => [UnitKind.Duration],
        WeatherQuantity.Rain or WeatherQuantity.ReferenceEt => daily ? [UnitKind.Depth, UnitKind.DepthPerDay] : [UnitKind.Depth],
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "Not a weather quantity."),
    };

    /// <summary>The unit so spelled that the quantity may come in, or null.</summary>
    public static Unit? Find(string spelling, WeatherQuantity quantity, bool daily) =>
        Kinds(quantity, daily).Select(kind => Units.Find(spelling, kind)).FirstOrDefault(unit => unit is not null);
}
