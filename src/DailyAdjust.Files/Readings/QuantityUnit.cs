using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Readings;

/// <summary>A quantity in the unit that a weather file writes it in, and its value in the reading's own.</summary>
/// <param name="Quantity">What the column measures.</param>
/// <param name="Unit">The unit that the file uses.</param>
/// <param name="Counter">The column is a running total of rain.</param>
internal sealed record QuantityUnit(WeatherQuantity Quantity, Unit Unit, bool Counter = false)
{
    private const double SecondsPerDay = 86400;

    /// <summary>A total per day is the day's total, whether the clock gave the day 23, 24 or 25 hours.</summary>
    private readonly bool _perDay = Unit.Symbol.EndsWith("/day", StringComparison.Ordinal);

    /// <summary>The value in the unit of <see cref="Core.Weather.Reading"/>: °C, %, m/s, MJ/m², h or mm for the interval.</summary>
    /// <param name="value">As the file has it.</param>
    /// <param name="interval">The reading's interval: a mean radiation becomes the energy received in it, a run of wind its mean speed.</param>
    public double ToReading(double value, TimeSpan interval)
    {
        var metric = Unit.ToMetric(value);
        return Unit.Kind switch
        {
            UnitKind.RadiationPower => metric * (_perDay ? SecondsPerDay : interval.TotalSeconds) / 1e6,
            UnitKind.Duration => metric / 60,
            UnitKind.WindRun => metric / interval.TotalSeconds,
            _ => metric,
        };
    }
}
