using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Humidity beyond saturation: a little is a wet sensor, more a broken one.</summary>
internal static class HumidityCheck
{
    /// <summary>Up to here a humidity above 100 % is a wet sensor and counts as 100 %; beyond it the sensor is broken. Common practice.</summary>
    public const double MostPercent = 105;

    private const double LeastPercent = 0.5;

    public static WeatherCheck About { get; } = new(
        "humidity",
        "humidity that air cannot have",
        "below 0.5 % or above 105 %",
        WeatherCheck.IsSetAside + "; from 100 to 105 % (beyond, where overruled) it counts as 100 %",
        "common practice",
        [WeatherQuantity.RelativeHumidity, WeatherQuantity.RelativeHumidityMax, WeatherQuantity.RelativeHumidityMin]);

    private static readonly ValueLimit[] Limits =
    [
        Limit(WeatherQuantity.RelativeHumidity, r => r.RelativeHumidityPercent, (r, v) => r with { RelativeHumidityPercent = v }),
        Limit(WeatherQuantity.RelativeHumidityMax, r => r.RelativeHumidityMaxPercent, (r, v) => r with { RelativeHumidityMaxPercent = v }),
        Limit(WeatherQuantity.RelativeHumidityMin, r => r.RelativeHumidityMinPercent, (r, v) => r with { RelativeHumidityMinPercent = v }),
    ];

    public static Reading Keep(Reading reading, CheckNotes notes)
    {
        var kept = reading;
        foreach (var limit in Limits)
        {
            var value = limit.Get(kept);
            if (LimitsCheck.IsOutside(About, kept, notes, limit, value))
            {
                kept = limit.With(kept, double.NaN);
            }
            else if (value > 100)
            {
                kept = limit.With(kept, 100);
            }
        }

        return kept;
    }

    private static ValueLimit Limit(WeatherQuantity quantity, Func<Reading, double> get, Func<Reading, double, Reading> with) =>
        new(quantity, "%", LeastPercent, MostPercent, 0, double.PositiveInfinity, get, with);
}
