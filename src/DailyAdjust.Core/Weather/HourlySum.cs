using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>A day's sum of hourly reference ET.</summary>
/// <param name="Mm">May be below 0 on a day of dew.</param>
/// <param name="Humidity">The quantity that vapour pressure came from.</param>
/// <param name="Hours">What it was reckoned from.</param>
internal readonly record struct HourlySum(double Mm, WeatherQuantity Humidity, IReadOnlyList<HourOfDay> Hours)
{
    private const int HoursBefore = 26;

    /// <summary>Null where any hour of the day lacks an input, or the day has no whole number of hours.</summary>
    public static HourlySum? Of(StationWindow window)
    {
        if (window.Day.Length.Ticks % TimeSpan.TicksPerHour != 0)
        {
            return null;
        }

        var humidity = WeatherQuantity.RelativeHumidity;
        var hours = HoursOf(window, 0);
        var temperature = HourlyMeans.Over(window.Series(WeatherQuantity.AirTemperature), hours);
        var wind = HourlyMeans.Over(window.Series(WeatherQuantity.WindSpeed), hours);
        var moisture = HourlyMeans.Over(window.Series(humidity), hours);
        if (Array.Exists(moisture, double.IsNaN))
        {
            humidity = WeatherQuantity.DewPoint;
            moisture = HourlyMeans.Over(window.Series(humidity), hours);
        }

        // The hours of the day before lend their cloud factor to the night.
        var solarHours = HoursOf(window, HoursBefore);
        var solar = HourlyMeans.Over(window.Series(WeatherQuantity.SolarRadiation), solarHours);
        if (Array.Exists(temperature, double.IsNaN) || Array.Exists(wind, double.IsNaN) || Array.Exists(moisture, double.IsNaN)
            || Array.Exists(solar[HoursBefore..], double.IsNaN))
        {
            return null;
        }

        var cloud = CloudFactors(window.Site, solarHours, solar)[HoursBefore..];
        var sum = 0.0;
        var reckoned = new List<HourOfDay>(hours.Count);
        for (var h = 0; h < hours.Count; h++)
        {
            var air = new HourlyAir
            {
                AirTemperatureC = temperature[h],
                VapourPressureKPa = humidity == WeatherQuantity.RelativeHumidity
                    ? Atmosphere.VapourPressureKPa(temperature[h], moisture[h])
                    : Atmosphere.VapourPressureFromDewPointKPa(moisture[h]),
                WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(wind[h], window.Source.WindHeightM),
                SolarRadiationMJPerM2 = solar[HoursBefore + h],
                CloudFactor = cloud[h],
                ElevationM = window.Site.ElevationM,
            };
            sum += ReferenceEtHourly.EtoMm(air);
            reckoned.Add(new(hours[h], air, moisture[h], wind[h]));
        }

        return new(sum, humidity, reckoned);
    }

    private static double[] CloudFactors(Site site, List<DateTimeOffset> hours, double[] solar)
    {
        var factors = new double[hours.Count];
        var held = CloudFactorHold.Start;
        for (var h = 0; h < hours.Count; h++)
        {
            var (begin, end) = (hours[h], hours[h].AddHours(1));
            var dayOfYear = site.Clock.DateOf(begin).DayOfYear;
            var elevation = Sun.ElevationRad(begin.AddMinutes(30), site.LatitudeDeg, site.LongitudeDeg, dayOfYear);
            var ra = Sun.ExtraterrestrialRadiationMJPerM2(begin, end, site.LatitudeDeg, site.LongitudeDeg, dayOfYear);
            held = held.Next(begin, end, elevation, solar[h], Radiation.ClearSkyMJPerM2(ra, site.ElevationM));
            factors[h] = held.Factor;
        }

        return factors;
    }

    /// <summary>Clock hours from 00:00; hourly readings that begin at another minute keep their own hours.</summary>
    private static List<DateTimeOffset> HoursOf(StationWindow window, int before)
    {
        var hour = TimeSpan.FromHours(1);
        var first = window.Source.Interval == hour ? window.FirstInterval : window.Day.Begin;
        List<DateTimeOffset> hours = [];
        for (var begin = first - (before * hour); begin < window.Day.End; begin += hour)
        {
            hours.Add(begin);
        }

        return hours;
    }
}

/// <summary>One hour of a day.</summary>
/// <param name="Begin">UTC.</param>
/// <param name="Air">What went into the equation.</param>
/// <param name="Moisture">Relative humidity, %, or dew point, °C, whichever vapour pressure came from.</param>
/// <param name="WindSpeedMPerS">At the anemometer.</param>
internal readonly record struct HourOfDay(DateTimeOffset Begin, HourlyAir Air, double Moisture, double WindSpeedMPerS);
