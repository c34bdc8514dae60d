using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>Radiation that reaches, stays at and leaves a grass surface. Source: [FAO56] ch. 3, p. 49-54; [ASCE05] for hours.</summary>
public static class Radiation
{
    /// <summary>Albedo of the grass reference. Source: [FAO56] p. 51.</summary>
    public const double Albedo = 0.23;

    /// <summary>MJ/K⁴ m² per day. Source: [FAO56] p. 52.</summary>
    public const double StefanBoltzmannMJPerK4M2Day = 4.903e-9;

    /// <summary>MJ/K⁴ m² per hour. Source: [ASCE05] eq. 44.</summary>
    public const double StefanBoltzmannMJPerK4M2Hour = 2.042e-10;

    /// <summary>Temperature coefficient of radiation inland. Source: [FAO56] eq. 50, p. 60.</summary>
    public const double InteriorCoefficient = 0.16;

    /// <summary>Temperature coefficient of radiation on a coast. Source: [FAO56] eq. 50, p. 60.</summary>
    public const double CoastalCoefficient = 0.19;

    /// <summary>Rs/Rso where nothing is known of it. Source: [ASCE05] hourly net longwave radiation (0.4 to 0.6 in humid, 0.7 to 0.8 in dry climates).</summary>
    public const double UnknownClearness = 0.7;

    private const double LeastClearness = 0.3;
    private const double IceToKelvin = 273.16;

    /// <summary>Solar radiation from hours of sunshine, MJ/m², as 0.25 and bs 0.50. Source: [FAO56] eq. 35, p. 50.</summary>
    /// <param name="sunshineH">Hours of bright sunshine; more than daylight counts as daylight.</param>
    /// <param name="daylightHours">0 to 24 h; 0 gives 0.</param>
    /// <param name="extraterrestrialMJPerM2">Of the same time, 0 or more.</param>
    public static double SolarFromSunshineMJPerM2(double sunshineH, double daylightHours, double extraterrestrialMJPerM2)
    {
        Require.Within(sunshineH, 0, 24, nameof(sunshineH));
        Require.Within(daylightHours, 0, 24, nameof(daylightHours));
        return daylightHours <= 0 ? 0 : (0.25 + (0.50 * Math.Min(1, sunshineH / daylightHours))) * extraterrestrialMJPerM2;
    }

    /// <summary>
    /// Solar radiation from the day's range of temperature, MJ/m² per day, at most that of a clear sky. Source: [FAO56] eq. 50, p. 60.
    /// </summary>
    /// <param name="coefficient"><see cref="InteriorCoefficient"/> or <see cref="CoastalCoefficient"/>.</param>
    public static double SolarFromTemperatureRangeMJPerM2Day(
        double temperatureMaxC, double temperatureMinC, double coefficient, double extraterrestrialMJPerM2Day, double elevationM)
    {
        var range = Require.Within(temperatureMaxC - temperatureMinC, 0, ClimateLimits.WidestTemperatureRangeC, nameof(temperatureMaxC));
        return Math.Min(
            coefficient * Math.Sqrt(range) * extraterrestrialMJPerM2Day,
            ClearSkyMJPerM2(extraterrestrialMJPerM2Day, elevationM));
    }

    /// <summary>Clear-sky radiation of the same time as Ra, MJ/m². Source: [FAO56] eq. 37, p. 51.</summary>
    public static double ClearSkyMJPerM2(double extraterrestrialMJPerM2, double elevationM) =>
        (0.75 + (2e-5 * elevationM)) * extraterrestrialMJPerM2;

    /// <summary>What a grass surface keeps of solar radiation, MJ/m². Source: [FAO56] eq. 38, p. 51.</summary>
    public static double NetShortwaveMJPerM2(double solarMJPerM2) => (1 - Albedo) * solarMJPerM2;

    /// <summary>
    /// Cloud factor of net longwave radiation, 0.055 to 1: 1.35 Rs/Rso - 0.35 with Rs/Rso kept in 0.3 to 1.
    /// Source: [FAO56] eq. 39, p. 52; limits [ASCE05] eqs 18 and 45.
    /// </summary>
    /// <param name="solarMJPerM2">0 or more.</param>
    /// <param name="clearSkyMJPerM2">Of the same time; where it is 0 (the sun does not rise), <see cref="UnknownClearness"/> is taken.</param>
    public static double CloudFactor(double solarMJPerM2, double clearSkyMJPerM2) =>
        CloudFactor(clearSkyMJPerM2 > 0 ? solarMJPerM2 / clearSkyMJPerM2 : UnknownClearness);

    /// <summary>Cloud factor from Rs/Rso, 0.055 to 1.</summary>
    public static double CloudFactor(double clearness) => (1.35 * Math.Clamp(clearness, LeastClearness, 1)) - 0.35;

    /// <summary>Net outgoing longwave radiation of a day, MJ/m² per day. Source: [FAO56] eq. 39, p. 52.</summary>
    public static double NetLongwaveMJPerM2Day(double temperatureMaxC, double temperatureMinC, double vapourPressureKPa, double cloudFactor) =>
        (BlackBodyMJPerM2Day(temperatureMaxC) + BlackBodyMJPerM2Day(temperatureMinC)) / 2
            * NetEmissivity(vapourPressureKPa) * cloudFactor;

    /// <summary>Net outgoing longwave radiation of an hour, MJ/m² per hour. Source: [ASCE05] eq. 44.</summary>
    public static double NetLongwaveMJPerM2Hour(double temperatureC, double vapourPressureKPa, double cloudFactor) =>
        StefanBoltzmannMJPerK4M2Hour * FourthPower(temperatureC + IceToKelvin) * NetEmissivity(vapourPressureKPa) * cloudFactor;

    /// <summary>σT⁴, MJ/m² per day. Source: [FAO56] table 2.8, p. 221.</summary>
    public static double BlackBodyMJPerM2Day(double temperatureC) =>
        StefanBoltzmannMJPerK4M2Day * FourthPower(temperatureC + IceToKelvin);

    private static double FourthPower(double value) => value * value * (value * value);

    private static double NetEmissivity(double vapourPressureKPa) =>
        0.34 - (0.14 * Math.Sqrt(Require.Within(vapourPressureKPa, 0, 20, nameof(vapourPressureKPa))));
}
