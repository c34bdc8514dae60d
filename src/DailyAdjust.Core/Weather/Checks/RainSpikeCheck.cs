using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// A heavy rain under dry air and bright sun: somebody cleaned the bucket, or a sprinkler hit it. What really fell in the interval is
/// not known, so the day is not either.
/// </summary>
internal static class RainSpikeCheck
{
    private const double LeastMm = 10;
    private const double DryBelowPercent = 60;
    private const double SunnyShare = 0.8;

    /// <summary>Below it a share of clear-sky radiation says little, rad. Source: [ASCE05] eq. 46.</summary>
    private const double LeastElevationRad = CloudFactorHold.LeastElevationRad;

    private static readonly double LeastSine = Math.Sin(LeastElevationRad);

    public static WeatherCheck About { get; } = new(
        "rain_spike",
        "rain that was none: a cleaned bucket, a sprinkler",
        "10 mm or more in one interval of an hour or less while humidity in it and in the next is below 60 % and the sun (above 0.3 rad) shines at more than 0.8 of a clear sky; "
            + "where one of the two cannot be told, the other decides",
        WeatherCheck.IsSetAside + "; the day's rain is unknown and asked for, unless a logbook entry covers the interval",
        "common practice",
        [WeatherQuantity.Rain]);

    public static void Run(CheckedRows rows)
    {
        var (from, to) = rows.OfDay();
        for (var row = from; row < to; row++)
        {
            if (!(rows[row].RainMm >= LeastMm) || rows.Notes.Source.Accepts(About, WeatherQuantity.Rain))
            {
                continue;
            }

            var (dry, sunny) = (IsDry(rows, row), IsSunny(rows, row));
            if ((dry ?? sunny) == true && (sunny ?? dry) == true)
            {
                rows.Notes.RainNotKnown(rows[row]);
                rows.SetAside(About, WeatherQuantity.Rain, row, row + 1, "mm", (dry == true ? "the air stayed dry" : "the sun was shining") + ": a cleaned bucket, or a sprinkler?");
            }
        }
    }

    /// <summary>Null = cannot be told.</summary>
    private static bool? IsDry(CheckedRows rows, int row)
    {
        var during = rows.Value(row, WeatherQuantity.RelativeHumidity);
        var after = row + 1 < rows.Count && rows[row + 1].Begin == rows[row].End ? rows.Value(row + 1, WeatherQuantity.RelativeHumidity) : double.NaN;
        return double.IsNaN(during + after) ? null : during < DryBelowPercent && after < DryBelowPercent;
    }

    /// <summary>Null = cannot be told.</summary>
    private static bool? IsSunny(CheckedRows rows, int row)
    {
        var sun = rows.Notes.Sun;
        var power = rows.Value(row, WeatherQuantity.SolarRadiation) * SeriesValue.WPerM2OfMJPerM2Hour;
        return double.IsNaN(power) || sun.SineOfElevation(rows[row].Begin + ((rows[row].End - rows[row].Begin) / 2)) <= LeastSine
            ? null
            : power > SunnyShare * sun.ClearSkyWPerM2(rows[row]);
    }
}
