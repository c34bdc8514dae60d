using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A value, or a few within half an hour, far from both its neighbours, which agree: a loose plug, a radio, a spark.</summary>
internal static class SpikeCheck
{
    private const double MostDegreesC = 10;
    private const double MostHumidityPercent = 40;
    private const double MostWindMPerS = 20;

    /// <summary>The neighbours agree within this share of the limit.</summary>
    private const double NeighboursShare = 0.5;

    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(30);
    private static readonly TimeSpan NeighbourWithin = TimeSpan.FromHours(1);

    private static readonly (WeatherQuantity Quantity, double Most, string Unit)[] Limits =
    [
        (WeatherQuantity.AirTemperature, MostDegreesC, "°C"),
        (WeatherQuantity.AirTemperatureMax, MostDegreesC, "°C"),
        (WeatherQuantity.AirTemperatureMin, MostDegreesC, "°C"),
        (WeatherQuantity.DewPoint, MostDegreesC, "°C"),
        (WeatherQuantity.RelativeHumidity, MostHumidityPercent, "%"),
        (WeatherQuantity.WindSpeed, MostWindMPerS, "m/s"),
    ];

    public static WeatherCheck About { get; } = new(
        "spike",
        "one value, or several within 30 minutes, that stand out from the value before and the value after, which agree",
        "by more than 10 °C, 40 % of humidity or 20 m/s to the same side of both, while the two agree within half of that; not where a shower fell that cools or moistens the air",
        WeatherCheck.IsSetAside,
        "common practice",
        [.. Limits.Select(l => l.Quantity)]);

    public static void Run(CheckedRows rows)
    {
        foreach (var (quantity, most, unit) in Limits)
        {
            var last = -1;
            var lastValue = double.NaN;
            for (var row = 0; row < rows.Count; row++)
            {
                var value = rows.Value(row, quantity);
                if (double.IsNaN(value))
                {
                    continue;
                }

                if (Math.Abs(value - lastValue) > most && rows[row].Begin - rows[last].End <= NeighbourWithin
                    && EndOfSpike(rows, quantity, most, row, lastValue) is { } end && !IsShower(rows, quantity, row, end, value > lastValue))
                {
                    rows.SetAside(About, quantity, row, end, unit, string.Create(CultureInfo.InvariantCulture, $"more than {most} {unit} from the values before and after it"));
                    row = end - 1;
                    continue;
                }

                (last, lastValue) = (row, value);
            }
        }
    }

    /// <summary>A shower cools and moistens the air for an hour, and the sun undoes it.</summary>
    private static bool IsShower(CheckedRows rows, WeatherQuantity quantity, int from, int end, bool upwards)
    {
        if (quantity is WeatherQuantity.DewPoint or WeatherQuantity.WindSpeed || upwards != quantity is WeatherQuantity.RelativeHumidity)
        {
            return false;
        }

        for (var row = from; row < end; row++)
        {
            if (rows[row].RainMm > 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The row of the value after the spike; null = it is none.</summary>
    private static int? EndOfSpike(CheckedRows rows, WeatherQuantity quantity, double most, int from, double before)
    {
        var side = Math.Sign(rows.Value(from, quantity) - before);
        var (least, lastEnd) = (double.PositiveInfinity, rows[from].End);
        for (var row = from; row < rows.Count && rows[row].Begin - lastEnd <= NeighbourWithin; row++)
        {
            var value = rows.Value(row, quantity);
            if (double.IsNaN(value))
            {
                continue;
            }

            var off = side * (value - before);
            if (off > most && (row == from || rows[row].End - rows[from].Begin <= Longest))
            {
                (least, lastEnd) = (Math.Min(least, off), rows[row].End);
                continue;
            }

            var agrees = Math.Abs(value - before) <= most * NeighboursShare;
            return agrees && least - off > most ? row : null;
        }

        return null;
    }
}
