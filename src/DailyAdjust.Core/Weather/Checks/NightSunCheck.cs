using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Sunshine while the sun is down: the clock of the file is wrong, or a lamp shines on the sensor.</summary>
internal static class NightSunCheck
{
    /// <summary>More than moon, twilight and lamps, W/m². Common practice.</summary>
    private const double MostWPerM2 = 50;

    /// <summary>Twilight is over below this elevation, rad. Common practice.</summary>
    private const double NightElevationRad = -0.1;

    private static readonly double NightSine = Math.Sin(NightElevationRad);

    public static WeatherCheck About { get; } = new(
        "night_sun",
        "radiation while the sun is below the horizon",
        "above 50 W/m² in an interval of an hour or less all of which the sun stands more than 0.1 rad below the horizon",
        WeatherCheck.IsSetAside,
        "common practice",
        [WeatherQuantity.SolarRadiation]);

    public static Reading Keep(Reading r, CheckNotes notes)
    {
        if (double.IsNaN(r.SolarRadiationMJPerM2) || r.End - r.Begin > TimeSpan.FromHours(1))
        {
            return r;
        }

        var power = r.SolarRadiationMJPerM2 * 1e6 / (r.End - r.Begin).TotalSeconds;
        return power > MostWPerM2 && IsNight(r, notes.Sun)
            && notes.IsAside(About, r, WeatherQuantity.SolarRadiation, power, "W/m²", "the sun was below the horizon: is the clock of the file right?")
                ? r with { SolarRadiationMJPerM2 = double.NaN }
                : r;
    }

    private static bool IsNight(Reading r, SunOfDay sun) =>
        sun.SineOfElevation(r.Begin + ((r.End - r.Begin) / 2)) < NightSine
        && sun.SineOfElevation(r.Begin) < NightSine
        && sun.SineOfElevation(r.End) < NightSine;
}
