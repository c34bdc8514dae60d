using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Files.Formats;

/// <summary>Gathers what a forecast's layers say, hour by hour. A value that comes again for an hour takes the earlier one's place.</summary>
internal sealed class ForecastHours
{
    /// <summary>From the first interval of the file: bounds what a damaged file can fill.</summary>
    private static readonly TimeSpan Reach = TimeSpan.FromDays(60);

    private readonly SortedDictionary<DateTimeOffset, Reading> _hours = [];
    private DateTimeOffset? _first;

    /// <summary>Whether an interval lies near the file's first one.</summary>
    public bool Reaches(ForecastInterval interval)
    {
        _first ??= interval.Begin;
        return (interval.Begin - _first.Value).Duration() <= Reach;
    }

    /// <summary>
    /// A mean or a chance holds for every hour of its interval; an amount is spread evenly over them. The highest and the lowest temperature of an
    /// interval that crosses midnight belong to the day in which it ends: the night's lowest falls near sunrise, and the evening before is not that cold.
    /// </summary>
    public void Put(ForecastInterval interval, WeatherQuantity quantity, double metric, SiteClock clock)
    {
        var isExtreme = quantity is WeatherQuantity.AirTemperatureMax or WeatherQuantity.AirTemperatureMin;
        var lastDay = clock.DateOf(interval.End.AddHours(-1));
        for (var hour = 0; hour < interval.Hours; hour++)
        {
            var begin = interval.Begin.AddHours(hour);
            if (isExtreme && clock.DateOf(begin) != lastDay)
            {
                continue;
            }

            var reading = _hours.TryGetValue(begin, out var known) ? known : new Reading { Begin = begin, End = begin.AddHours(1) };
            _hours[begin] = With(reading, quantity, quantity == WeatherQuantity.Rain ? metric / interval.Hours : metric);
        }
    }

    /// <summary>Ascending, one per hour of which anything is known.</summary>
    public IEnumerable<Reading> ToReadings() => _hours.Values;

    private static Reading With(Reading reading, WeatherQuantity quantity, double value) => quantity switch
    {
        WeatherQuantity.AirTemperature => reading with { AirTemperatureC = value },
        WeatherQuantity.AirTemperatureMax => reading with { AirTemperatureMaxC = value },
        WeatherQuantity.AirTemperatureMin => reading with { AirTemperatureMinC = value },
        WeatherQuantity.DewPoint => reading with { DewPointC = value },
        WeatherQuantity.RelativeHumidity => reading with { RelativeHumidityPercent = value },
        WeatherQuantity.WindSpeed => reading with { WindSpeedMPerS = value },
        WeatherQuantity.RainChance => reading with { RainChancePercent = value },
        WeatherQuantity.Rain => reading with { RainMm = value },
        _ => throw new ArgumentOutOfRangeException(nameof(quantity), quantity, "No forecast layer has it."),
    };
}
