using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>
/// Gross limits: what a working sensor near the ground cannot have measured is set aside with its reason and then counts as missing.
/// The limits are common practice, a little beyond the records of the inhabited world; they catch broken sensors, wrong units and
/// wrong clocks, not doubtful weather.
/// </summary>
internal static class SensorLimits
{
    /// <summary>Up to here a humidity above 100 % is a wet sensor and counts as 100 %; beyond it the sensor is broken. Common practice.</summary>
    public const double HumidityMostPercent = 105;

    /// <summary>Down to here a negative radiation is a cooling pyranometer at night and counts as 0, W/m². Common practice.</summary>
    private const double SolarLeastWPerM2 = -20;

    /// <summary>Above the solar constant (1367 W/m²) for the minutes in which clouds add their light. Common practice.</summary>
    private const double SolarMostWPerM2 = 1500;

    /// <summary>More than moon, twilight and lamps, W/m². Common practice.</summary>
    private const double SolarNightMostWPerM2 = 50;

    /// <summary>Twilight is over below this elevation, rad. Common practice.</summary>
    private const double NightElevationRad = -0.1;

    /// <summary>Above Ra of a day: twilight and the zero of the sensor, MJ/m² per day. Common practice.</summary>
    private const double SolarDayMarginMJPerM2 = 1;

    private const double AirLeastC = -60;
    private const double AirMostC = 60;

    /// <summary>What two temperatures within their limits can lie apart.</summary>
    public const double WidestTemperatureRangeC = AirMostC - AirLeastC;

    private const double HumidityLeastPercent = 0.5;
    private const double DewPointAboveAirC = 1;
    private const double RainMostMmPerMin = 15;
    private const double RainMostMmPerHour = 305;
    private const double RainMostMmPerDay = 1825;

    private static readonly Limit[] Limits =
    [
        new(WeatherQuantity.AirTemperature, "°C", AirLeastC, AirMostC, r => r.AirTemperatureC, (r, v) => r with { AirTemperatureC = v }),
        new(WeatherQuantity.AirTemperatureMax, "°C", AirLeastC, AirMostC, r => r.AirTemperatureMaxC, (r, v) => r with { AirTemperatureMaxC = v }),
        new(WeatherQuantity.AirTemperatureMin, "°C", AirLeastC, AirMostC, r => r.AirTemperatureMinC, (r, v) => r with { AirTemperatureMinC = v }),
        new(WeatherQuantity.RelativeHumidity, "%", HumidityLeastPercent, HumidityMostPercent, r => r.RelativeHumidityPercent, (r, v) => r with { RelativeHumidityPercent = v }),
        new(WeatherQuantity.RelativeHumidityMax, "%", HumidityLeastPercent, HumidityMostPercent, r => r.RelativeHumidityMaxPercent, (r, v) => r with { RelativeHumidityMaxPercent = v }),
        new(WeatherQuantity.RelativeHumidityMin, "%", HumidityLeastPercent, HumidityMostPercent, r => r.RelativeHumidityMinPercent, (r, v) => r with { RelativeHumidityMinPercent = v }),
        new(WeatherQuantity.DewPoint, "°C", -80, 40, r => r.DewPointC, (r, v) => r with { DewPointC = v }),
        new(WeatherQuantity.WindSpeed, "m/s", 0, 75, r => r.WindSpeedMPerS, (r, v) => r with { WindSpeedMPerS = v }),
    ];

    /// <summary>The reading without the values that its sensors cannot have measured; those are added to <paramref name="setAside"/>.</summary>
    public static Reading Keep(Reading reading, string station, Site site, ICollection<SetAsideValue> setAside)
    {
        void SetAside(WeatherQuantity quantity, double value, string unit, string why) =>
            setAside.Add(new(station, reading.Begin, string.Create(CultureInfo.InvariantCulture, $"{QuantityName.Of(quantity)} {value:0.###} {unit}"), why));

        var kept = reading;
        foreach (var limit in Limits)
        {
            var value = limit.Get(kept);
            if (value < limit.Least || value > limit.Most)
            {
                SetAside(limit.Quantity, value, limit.Unit, string.Create(CultureInfo.InvariantCulture, $"outside {limit.Least} to {limit.Most} {limit.Unit}"));
                kept = limit.With(kept, double.NaN);
            }
        }

        if (kept.AirTemperatureMaxC < kept.AirTemperatureMinC)
        {
            SetAside(WeatherQuantity.AirTemperatureMax, kept.AirTemperatureMaxC, "°C", "the highest temperature is below the lowest");
            SetAside(WeatherQuantity.AirTemperatureMin, kept.AirTemperatureMinC, "°C", "the lowest temperature is above the highest");
            kept = kept with { AirTemperatureMaxC = double.NaN, AirTemperatureMinC = double.NaN };
        }

        if (kept.DewPointC > kept.AirTemperatureC + DewPointAboveAirC)
        {
            SetAside(WeatherQuantity.DewPoint, kept.DewPointC, "°C", "the dew point is above the air temperature");
            kept = kept with { DewPointC = double.NaN };
        }

        kept = KeepHumidity(kept);
        kept = KeepSolar(kept, site, SetAside);
        return KeepSums(kept, SetAside);
    }

    private static Reading KeepHumidity(Reading r) =>
        r.RelativeHumidityPercent > 100 || r.RelativeHumidityMaxPercent > 100 || r.RelativeHumidityMinPercent > 100
            ? r with
            {
                RelativeHumidityPercent = Math.Min(100, r.RelativeHumidityPercent),
                RelativeHumidityMaxPercent = Math.Min(100, r.RelativeHumidityMaxPercent),
                RelativeHumidityMinPercent = Math.Min(100, r.RelativeHumidityMinPercent),
            }
            : r;

    private static Reading KeepSolar(Reading r, Site site, Action<WeatherQuantity, double, string, string> setAside)
    {
        if (double.IsNaN(r.SolarRadiationMJPerM2))
        {
            return r;
        }

        var power = r.SolarRadiationMJPerM2 * 1e6 / (r.End - r.Begin).TotalSeconds;
        var isDay = r.End - r.Begin > TimeSpan.FromHours(1);
        string? why = null;
        if (isDay)
        {
            var most = Sun.ExtraterrestrialRadiationMJPerM2Day(site.LatitudeDeg, site.Clock.DateOf(r.Begin).DayOfYear) + SolarDayMarginMJPerM2;
            why = r.SolarRadiationMJPerM2 > most ? "more than the sun sends to the top of the atmosphere on that date" : null;
        }
        else if (power > SolarMostWPerM2)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"more than {SolarMostWPerM2} W/m²");
        }
        else if (power > SolarNightMostWPerM2 && IsNight(r, site))
        {
            why = "the sun was below the horizon: is the clock of the file right?";
        }

        if (power < SolarLeastWPerM2)
        {
            why = string.Create(CultureInfo.InvariantCulture, $"less than {SolarLeastWPerM2} W/m²");
        }

        if (why is null)
        {
            return power < 0 ? r with { SolarRadiationMJPerM2 = 0 } : r;
        }

        setAside(WeatherQuantity.SolarRadiation, isDay ? r.SolarRadiationMJPerM2 : power, isDay ? "MJ/m²" : "W/m²", why);
        return r with { SolarRadiationMJPerM2 = double.NaN };
    }

    private static bool IsNight(Reading r, Site site)
    {
        var dayOfYear = site.Clock.DateOf(r.Begin).DayOfYear;
        return Sun.ElevationRad(r.Begin, site.LatitudeDeg, site.LongitudeDeg, dayOfYear) < NightElevationRad
            && Sun.ElevationRad(r.Begin + ((r.End - r.Begin) / 2), site.LatitudeDeg, site.LongitudeDeg, dayOfYear) < NightElevationRad
            && Sun.ElevationRad(r.End, site.LatitudeDeg, site.LongitudeDeg, dayOfYear) < NightElevationRad;
    }

    private static Reading KeepSums(Reading r, Action<WeatherQuantity, double, string, string> setAside)
    {
        var hours = (r.End - r.Begin).TotalHours;
        var mostRain = hours > 1 ? RainMostMmPerDay : Math.Min(RainMostMmPerHour, RainMostMmPerMin * hours * 60);
        if (r.RainMm < 0 || r.RainMm > mostRain)
        {
            setAside(WeatherQuantity.Rain, r.RainMm, "mm", string.Create(CultureInfo.InvariantCulture, $"outside 0 to {mostRain:0.#} mm in {hours * 60:0} minutes"));
            r = r with { RainMm = double.NaN };
        }

        // A sunshine recorder's hour may be a minute long.
        if (r.SunshineH < 0 || r.SunshineH > Math.Min(24, hours * 1.02))
        {
            setAside(WeatherQuantity.Sunshine, r.SunshineH, "h", "outside 0 to the length of its interval");
            r = r with { SunshineH = double.NaN };
        }

        var mostEt = hours > 1 ? 20 : 2 * hours;
        var leastEt = hours > 1 ? 0 : -0.5 * hours;
        if (r.ReferenceEtMm < leastEt || r.ReferenceEtMm > mostEt)
        {
            setAside(WeatherQuantity.ReferenceEt, r.ReferenceEtMm, "mm", string.Create(CultureInfo.InvariantCulture, $"outside {leastEt:0.##} to {mostEt:0.##} mm"));
            r = r with { ReferenceEtMm = double.NaN };
        }

        return r;
    }

    private sealed record Limit(
        WeatherQuantity Quantity, string Unit, double Least, double Most, Func<Reading, double> Get, Func<Reading, double, Reading> With);
}
