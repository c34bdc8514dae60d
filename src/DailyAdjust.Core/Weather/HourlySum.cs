using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The sum of hourly reference ET from 00:00 of a day until the first hour that is not known.</summary>
/// <param name="Mm">May be below 0 on a day of dew.</param>
/// <param name="Humidity">The quantity that vapour pressure came from.</param>
/// <param name="Hours">How many hours.</param>
/// <param name="Through">End of the last of them, UTC; without any the day's begin.</param>
internal readonly record struct HourlySum(double Mm, WeatherQuantity Humidity, int Hours, DateTimeOffset Through)
{
    /// <summary>What it was reckoned from; empty = the station's own column.</summary>
    public IReadOnlyList<HourOfDay> Reckoned { get; init; } = [];

    private const int HoursBefore = 26;

    /// <summary>Null where any hour of the day lacks an input, or the day has no whole number of hours.</summary>
    public static HourlySum? Of(StationWindow window)
    {
        if (window.Day.Length.Ticks % TimeSpan.TicksPerHour != 0)
        {
            return null;
        }

        var hours = HoursOf(window, 0);
        var known = Known(window, hours);
        return known.Count < hours.Count ? null : Sum(window, hours, known);
    }

    /// <summary>As far as every input is known.</summary>
    public static HourlySum SoFar(StationWindow window)
    {
        var hours = HoursOf(window, 0);
        return Sum(window, hours, Known(window, hours));
    }

    /// <summary>The same of the station's own column.</summary>
    public static HourlySum OfSupplied(StationWindow window)
    {
        var hours = HoursOf(window, 0);
        var eto = HourlyMeans.Over(window.Series(WeatherQuantity.ReferenceEt), hours);
        var known = CountKnown(eto);
        return new(eto[..known].Sum(), WeatherQuantity.ReferenceEt, known, known == 0 ? window.Day.Begin : hours[known - 1].AddHours(1));
    }

    /// <summary>Every hour's inputs, and of how many hours from the first on all are known.</summary>
    private static Inputs Known(StationWindow window, List<DateTimeOffset> hours)
    {
        var temperature = HourlyMeans.Over(window.Series(WeatherQuantity.AirTemperature), hours);
        var wind = HourlyMeans.Over(window.Series(WeatherQuantity.WindSpeed), hours);

        // The hours of the day before lend their cloud factor to the night.
        var solarHours = HoursOf(window, HoursBefore);
        var solar = HourlyMeans.Over(window.Series(WeatherQuantity.SolarRadiation), solarHours);
        var others = Math.Min(Math.Min(CountKnown(temperature), CountKnown(wind)), CountKnown(solar[HoursBefore..]));
        var humidity = WeatherQuantity.RelativeHumidity;
        var moisture = HourlyMeans.Over(window.Series(humidity), hours);
        if (CountKnown(moisture) < others)
        {
            var dewPoint = HourlyMeans.Over(window.Series(WeatherQuantity.DewPoint), hours);
            (humidity, moisture) = CountKnown(dewPoint) > CountKnown(moisture) ? (WeatherQuantity.DewPoint, dewPoint) : (humidity, moisture);
        }

        return new(temperature, wind, solarHours, solar, moisture, humidity, Math.Min(others, CountKnown(moisture)));
    }

    private static int CountKnown(double[] hours) => Array.FindIndex(hours, double.IsNaN) is var gap and >= 0 ? gap : hours.Length;

    private static HourlySum Sum(StationWindow window, List<DateTimeOffset> hours, Inputs known)
    {
        var cloud = CloudFactors(window.Site, known.SolarHours, known.Solar)[HoursBefore..];
        var sum = 0.0;
        var reckoned = new List<HourOfDay>(known.Count);
        for (var h = 0; h < known.Count; h++)
        {
            var air = new HourlyAir
            {
                AirTemperatureC = known.Temperature[h],
                VapourPressureKPa = known.Humidity == WeatherQuantity.RelativeHumidity
                    ? Atmosphere.VapourPressureKPa(known.Temperature[h], known.Moisture[h])
                    : Atmosphere.VapourPressureFromDewPointKPa(known.Moisture[h]),
                WindSpeed2mMPerS = Atmosphere.WindSpeed2mMPerS(known.Wind[h], window.Source.WindHeightM),
                SolarRadiationMJPerM2 = known.Solar[HoursBefore + h],
                CloudFactor = cloud[h],
                ElevationM = window.Site.ElevationM,
            };
            sum += ReferenceEtHourly.EtoMm(air);
            reckoned.Add(new(hours[h], air, known.Moisture[h], known.Wind[h]));
        }

        return new(sum, known.Humidity, known.Count, known.Count == 0 ? window.Day.Begin : hours[known.Count - 1].AddHours(1)) { Reckoned = reckoned };
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

    /// <summary>What the hours of a day are reckoned from; unknown = NaN.</summary>
    private readonly record struct Inputs(double[] Temperature, double[] Wind, List<DateTimeOffset> SolarHours, double[] Solar, double[] Moisture, WeatherQuantity Humidity, int Count);
}

/// <summary>One hour of a day.</summary>
/// <param name="Begin">UTC.</param>
/// <param name="Air">What went into the equation.</param>
/// <param name="Moisture">Relative humidity, %, or dew point, °C, whichever vapour pressure came from.</param>
/// <param name="WindSpeedMPerS">At the anemometer.</param>
internal readonly record struct HourOfDay(DateTimeOffset Begin, HourlyAir Air, double Moisture, double WindSpeedMPerS);
