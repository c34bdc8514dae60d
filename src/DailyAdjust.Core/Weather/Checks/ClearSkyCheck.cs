using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// More sun than a clear sky lets through, Rso = (0.75 + 2·10⁻⁵ z) Ra. Source: [FAO56] eq. 37, p. 51; as a check of sensors [FAO56] Annex 5
/// and [ASCE05] app. D. For an hour clouds beside the sun may add their light; a whole day cannot.
/// </summary>
internal static class ClearSkyCheck
{
    /// <summary>Above the formula's coarseness and a little calibration error.</summary>
    private const double MostOfDay = 1.15;

    /// <summary>Sun beside bright clouds: a fifth to a third above clear sky has been seen in hourly means. Common practice.</summary>
    private const double MostOfHour = 1.35;

    /// <summary>Twilight, and a clock a quarter of an hour off while the sun climbs, W/m².</summary>
    private const double HourMarginWPerM2 = 50;

    /// <summary>Shorter intervals see clouds' edges far above clear sky; they are judged by the day.</summary>
    private static readonly TimeSpan ShortestJudged = TimeSpan.FromMinutes(30);

    public static WeatherCheck About { get; } = new(
        "clear_sky",
        "more radiation than a clear sky lets through, Rso = (0.75 + 0.00002 x elevation in m) Ra",
        "of a day more than 1.15 Rso (at least 90 % of the daylight there); of an interval of 30 to 60 minutes more than 1.35 Rso + 50 W/m²",
        WeatherCheck.IsSetAside + ", the interval or the whole day's radiation",
        "[FAO56] eq. 37 and Annex 5, [ASCE05] app. D; the factors common practice",
        [WeatherQuantity.SolarRadiation]);

    /// <summary>One reading by itself: an hour, or a day.</summary>
    public static Reading Keep(Reading r, CheckNotes notes)
    {
        var length = r.End - r.Begin;
        if (double.IsNaN(r.SolarRadiationMJPerM2) || length < ShortestJudged)
        {
            return r;
        }

        if (length > TimeSpan.FromHours(1))
        {
            return r.SolarRadiationMJPerM2 > MostOfDay * notes.Sun.ClearSkyOfDayMJPerM2
                && notes.IsAside(About, r, WeatherQuantity.SolarRadiation, r.SolarRadiationMJPerM2, "MJ/m²", Times(MostOfDay))
                    ? SeriesValue.Without(r, WeatherQuantity.SolarRadiation)
                    : r;
        }

        var power = r.SolarRadiationMJPerM2 * 1e6 / length.TotalSeconds;
        return power > HourMarginWPerM2 && power > (MostOfHour * notes.Sun.ClearSkyWPerM2(r)) + HourMarginWPerM2
            && notes.IsAside(About, r, WeatherQuantity.SolarRadiation, power, "W/m²", Times(MostOfHour))
                ? SeriesValue.Without(r, WeatherQuantity.SolarRadiation)
                : r;
    }

    /// <summary>A day of intervals by its sum.</summary>
    public static void Run(CheckedRows rows)
    {
        var solar = new SolarDay(rows.Notes);
        var (from, to) = rows.OfDay();
        for (var row = from; row < to; row++)
        {
            solar.Add(rows[row]);
        }

        if (solar.Ratio > MostOfDay)
        {
            rows.SetAside(
                About, WeatherQuantity.SolarRadiation, from, to, "W/m²",
                string.Create(CultureInfo.InvariantCulture, $"the day's sum is {solar.Ratio:0.00} of a clear sky's"), SeriesValue.WPerM2OfMJPerM2Hour);
        }
    }

    private static string Times(double factor) => string.Create(CultureInfo.InvariantCulture, $"more than {factor:0.##} of a clear sky");
}
