using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>Which units a quantity may have in a weather file, and its value in the reading's own.</summary>
/// <param name="Quantity">What the column measures.</param>
/// <param name="Unit">The unit that the file uses.</param>
internal sealed record QuantityUnit(WeatherQuantity Quantity, Unit Unit)
{
    private const double SecondsPerDay = 86400;

    /// <summary>The kinds of unit that the quantity may have; rates per day only where the file has one row a day.</summary>
    public static UnitKind[] Kinds(WeatherQuantity quantity, bool daily) => quantity switch
    {
        WeatherQuantity.RelativeHumidity or WeatherQuantity.RelativeHumidityMax or WeatherQuantity.RelativeHumidityMin => [UnitKind.Percent],
        WeatherQuantity.WindSpeed => [UnitKind.Speed],
        WeatherQuantity.SolarRadiation => [UnitKind.RadiationPower, UnitKind.RadiationEnergy],
        WeatherQuantity.Sunshine => [UnitKind.Duration],
        WeatherQuantity.Rain or WeatherQuantity.ReferenceEt => daily ? [UnitKind.Depth, UnitKind.DepthPerDay] : [UnitKind.Depth],
        _ => [UnitKind.Temperature],
    };

    /// <summary>The value in the unit of <see cref="Core.Weather.Reading"/>: °C, %, m/s, MJ/m², h or mm for the interval.</summary>
    /// <param name="value">As the file has it.</param>
    /// <param name="interval">The reading's interval: a mean radiation becomes the energy received in it.</param>
    public double ToReading(double value, TimeSpan interval)
    {
        var metric = Unit.ToMetric(value);
        return Unit.Kind switch
        {
            UnitKind.RadiationPower => metric * (PerDay ? SecondsPerDay : interval.TotalSeconds) / 1e6,
            UnitKind.Duration => metric / 60,
            _ => metric,
        };
    }

    /// <summary>A total per day is the day's total, whether the clock gave the day 23, 24 or 25 hours.</summary>
    private bool PerDay => Unit.Symbol.EndsWith("/day", StringComparison.Ordinal);
}
