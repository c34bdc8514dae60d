using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// One value hour after hour: a frozen cup, a hung logger, a broken wire. Weather that a file rounds coarsely stands still longer, so
/// the limit doubles where the smallest change around the day is coarse.
/// </summary>
internal static class StuckCheck
{
    private const double SaturatedPercent = 97;
    private const double CalmMPerS = 0.5;
    private const double SunnyWPerM2 = 50;
    private const double DarkWPerM2 = 1;
    private const double CoarseFactor = 2;
    private const double Tolerance = 1e-6;

    /// <summary>Elevation at which a working sensor sees some light under any cloud, rad. Common practice; [ASCE05] judges clouds above it.</summary>
    private const double HighSunRad = 0.3;

    /// <summary>A missing value does not end a run, a longer gap does.</summary>
    private static readonly TimeSpan LongestGap = TimeSpan.FromHours(3);

    private static readonly TimeSpan LongestDark = TimeSpan.FromHours(6);
    private static readonly double HighSunSine = Math.Sin(HighSunRad);

    private static readonly Rule[] Rules =
    [
        new(WeatherQuantity.AirTemperature, "°C", 8, 0.5, 1, _ => true),
        new(WeatherQuantity.RelativeHumidity, "%", 12, 1, 1, v => v < SaturatedPercent),
        new(WeatherQuantity.DewPoint, "°C", 12, 0.5, 1, _ => true),
        new(WeatherQuantity.WindSpeed, "m/s", 12, 0.4, 1, v => v > CalmMPerS),
        new(WeatherQuantity.SolarRadiation, "W/m²", 3, 5, SeriesValue.WPerM2OfMJPerM2Hour, v => v > SunnyWPerM2),
    ];

    public static WeatherCheck About { get; } = new(
        "stuck",
        "a sensor that shows one value hour after hour",
        "unchanged for 8 h (air temperature), 12 h (humidity below 97 %, dew point, wind above 0.5 m/s) or 3 h (radiation above 50 W/m²); twice as long where the smallest change "
            + "around the day is 0.5 °C, 1 %, 0.4 m/s or 5 W/m² or more, as in files of whole °F; radiation below 1 W/m² for 6 h with the sun above 0.3 rad",
        WeatherCheck.IsSetAside + ", every value of the day that belongs to it",
        "common practice",
        [.. Rules.Select(r => r.Quantity)]);

    public static void Run(CheckedRows rows)
    {
        foreach (var rule in Rules)
        {
            OneValue(rows, rule);
        }

        NoLight(rows);
    }

    private static void OneValue(CheckedRows rows, Rule rule)
    {
        var (from, last, length) = (-1, -1, TimeSpan.Zero);
        var value = double.NaN;
        for (var row = 0; row < rows.Count; row++)
        {
            var next = rows.Value(row, rule.Quantity);
            if (double.IsNaN(next))
            {
                continue;
            }

            if (next == value && rows[row].Begin - rows[last].End <= LongestGap)
            {
                length += rows[row].End - rows[row].Begin;
            }
            else
            {
                End(rows, rule, from, last, length, value);
                (from, value, length) = (row, next, rows[row].End - rows[row].Begin);
            }

            last = row;
        }

        End(rows, rule, from, last, length, value);
    }

    private static void End(CheckedRows rows, Rule rule, int from, int last, TimeSpan length, double value)
    {
        if (length < rule.Longest || !rule.Judges(value * rule.Scale) || (length < rule.Longest * CoarseFactor && IsCoarse(rows, rule)))
        {
            return;
        }

        rows.SetAside(
            About, rule.Quantity, from, last + 1, rule.Unit, string.Create(CultureInfo.InvariantCulture, $"unchanged for {length.TotalHours:0.#} h"), rule.Scale);
    }

    /// <summary>Whether the smallest change from value to value around the day is as large as a coarse file's step.</summary>
    private static bool IsCoarse(CheckedRows rows, Rule rule)
    {
        var (smallest, last) = (double.PositiveInfinity, double.NaN);
        for (var row = 0; row < rows.Count; row++)
        {
            var value = rows.Value(row, rule.Quantity);
            if (double.IsNaN(value))
            {
                continue;
            }

            var change = Math.Abs(value - last);
            smallest = change > Tolerance && change < smallest ? change : smallest;
            last = value;
        }

        return !double.IsInfinity(smallest) && smallest * rule.Scale >= rule.CoarseStep - Tolerance;
    }

    private static void NoLight(CheckedRows rows)
    {
        var (from, length) = (-1, TimeSpan.Zero);
        for (var row = 0; row <= rows.Count; row++)
        {
            var power = row < rows.Count ? rows.Value(row, WeatherQuantity.SolarRadiation) * SeriesValue.WPerM2OfMJPerM2Hour : double.PositiveInfinity;
            if (double.IsNaN(power))
            {
                continue;
            }

            if (power < DarkWPerM2 && IsHighSun(rows, row))
            {
                (from, length) = (from < 0 ? row : from, length + (rows[row].End - rows[row].Begin));
                continue;
            }

            if (length >= LongestDark)
            {
                rows.SetAside(
                    About, WeatherQuantity.SolarRadiation, from, row, "W/m²",
                    string.Create(CultureInfo.InvariantCulture, $"no light for {length.TotalHours:0.#} h under a high sun"), SeriesValue.WPerM2OfMJPerM2Hour);
            }

            (from, length) = (-1, TimeSpan.Zero);
        }
    }

    private static bool IsHighSun(CheckedRows rows, int row) =>
        rows.Notes.Sun.SineOfElevation(rows[row].Begin + ((rows[row].End - rows[row].Begin) / 2)) > HighSunSine;

    /// <param name="Hours">How long a value may stand.</param>
    /// <param name="CoarseStep">From this smallest change on, twice as long.</param>
    /// <param name="Scale">From the series' unit to the one named.</param>
    /// <param name="Judges">Which values may not stand, in the unit named.</param>
    private sealed record Rule(WeatherQuantity Quantity, string Unit, double Hours, double CoarseStep, double Scale, Func<double, bool> Judges)
    {
        public TimeSpan Longest { get; } = TimeSpan.FromHours(Hours);
    }
}
