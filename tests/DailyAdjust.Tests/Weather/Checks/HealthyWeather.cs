using DailyAdjust.Core.Weather;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>Invented weather as working sensors have it: the sun's course under changing cloud, a daily wave of temperature, moist dawns, some rain.</summary>
internal static class HealthyWeather
{
    public static IReadOnlyList<Reading> Of(WeatherScene scene, DateOnly from, DateOnly through, int minutes = 60)
    {
        List<Reading> readings = [];
        var step = TimeSpan.FromMinutes(minutes);
        for (var date = from; date <= through; date = date.AddDays(1))
        {
            var (begin, end) = (scene.Clock.DayStart(date), scene.Clock.DayEnd(date));
            var noon = Noon(scene, date);
            for (; begin < end; begin += step)
            {
                readings.Add(At(scene, date, begin, step, (begin + (step / 2) - noon).TotalHours));
            }
        }

        return readings;
    }

    private static Reading At(WeatherScene scene, DateOnly date, DateTimeOffset begin, TimeSpan step, double hoursAfterNoon)
    {
        var day = date.DayOfYear;
        var ra = Sun.ExtraterrestrialRadiationMJPerM2(begin, begin + step, scene.LatitudeDeg, scene.LongitudeDeg, day);
        var clear = 0.75 + (0.22 * Wave(day, 5.3));
        var passing = 1 - (0.06 * (1 + Wave((day * 24) + hoursAfterNoon, 1.7)));
        var mean = 9 - (14 * Math.Cos(2 * Math.PI * (day - 25) / 365) * Math.Sign(scene.LatitudeDeg)) + (3 * Wave(day, 7.1));
        var air = mean + (6 * Math.Cos(2 * Math.PI * (hoursAfterNoon - 2.5) / 24)) + (0.7 * Wave((day * 24) + hoursAfterNoon, 2.9));
        var dew = Math.Min(mean - 6.5 + (0.6 * Wave((day * 24) + hoursAfterNoon, 11.3)), air - 0.2);
        return new Reading
        {
            Begin = begin,
            End = begin + step,
            AirTemperatureC = Math.Round(air, 1),
            RelativeHumidityPercent = Math.Round(100 * Vapour(dew) / Vapour(air), 1),
            WindSpeedMPerS = Math.Round(2.1 + (0.9 * Math.Cos(2 * Math.PI * (hoursAfterNoon - 3) / 24)) + (0.8 * Wave((day * 24) + hoursAfterNoon, 1.3)), 1),
            SolarRadiationMJPerM2 = Radiation.ClearSkyMJPerM2(ra, scene.ElevationM) * clear * passing,
            RainMm = day % 6 == 1 && hoursAfterNoon is > 5 and < 8 ? 1.2 * step.TotalHours : 0,
        };
    }

    /// <summary>-1 to 1.</summary>
    private static double Wave(double x, double length) => Math.Sin(2 * Math.PI * x / length);

    private static double Vapour(double temperatureC) => Math.Exp(17.27 * temperatureC / (temperatureC + 237.3));

    private static DateTimeOffset Noon(WeatherScene scene, DateOnly date)
    {
        var sun = Sun.Day(scene.Site, date);
        return sun.Sunrise + ((sun.Sunset - sun.Sunrise) / 2);
    }
}
