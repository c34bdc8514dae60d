namespace DailyAdjust.Core.Weather;

/// <summary>Pressure, vapour pressure and wind near the ground. Source: [FAO56] ch. 3, p. 31-41 and 55-56.</summary>
public static class Atmosphere
{
    /// <summary>The wind height at which a speed needs no conversion, m.</summary>
    public const double ReferenceWindHeightM = 2;

    /// <summary>Air pressure, kPa. Source: [FAO56] eq. 7, p. 31.</summary>
    /// <param name="elevationM">Metres above sea level, -500 to 9000.</param>
    public static double PressureKPa(double elevationM) =>
        101.3 * Math.Pow((293 - (0.0065 * Require.Within(elevationM, -500, 9000, nameof(elevationM)))) / 293, 5.26);

    /// <summary>Psychrometric constant, kPa/°C. Source: [FAO56] eq. 8, p. 32.</summary>
    /// <param name="elevationM">Metres above sea level, -500 to 9000.</param>
    public static double PsychrometricConstantKPaPerC(double elevationM) => 0.665e-3 * PressureKPa(elevationM);

    /// <summary>Saturation vapour pressure e°(T), kPa. Source: [FAO56] eq. 11, p. 36.</summary>
    /// <param name="temperatureC">-90 to 70 °C.</param>
    public static double SaturationVapourPressureKPa(double temperatureC) =>
        0.6108 * Math.Exp(17.27 * Require.Within(temperatureC, -90, 70, nameof(temperatureC)) / (temperatureC + 237.3));

    /// <summary>Mean saturation vapour pressure of a day, kPa. Source: [FAO56] eq. 12, p. 36.</summary>
    public static double MeanSaturationVapourPressureKPa(double temperatureMaxC, double temperatureMinC) =>
        DaySaturation.Of(temperatureMaxC, temperatureMinC).MeanKPa;

    /// <summary>Slope of the saturation vapour pressure curve, kPa/°C. Source: [FAO56] eq. 13, p. 37.</summary>
    /// <param name="temperatureC">-90 to 70 °C.</param>
    public static double SlopeKPaPerC(double temperatureC) =>
        4098 * SaturationVapourPressureKPa(temperatureC) / ((temperatureC + 237.3) * (temperatureC + 237.3));

    /// <summary>Vapour pressure from the dew point (where nothing else is known: the lowest temperature, eq. 48), kPa. Source: [FAO56] eq. 14, p. 37.</summary>
    public static double VapourPressureFromDewPointKPa(double dewPointC) => SaturationVapourPressureKPa(dewPointC);

    /// <summary>Vapour pressure of a day from the extremes of humidity, kPa. Source: [FAO56] eq. 17, p. 38.</summary>
    /// <param name="humidityMaxPercent">0 to 100 %, taken to go with the lowest temperature.</param>
    /// <param name="humidityMinPercent">0 to 100 %, taken to go with the highest temperature.</param>
    public static double VapourPressureFromExtremesKPa(
        double temperatureMaxC, double temperatureMinC, double humidityMaxPercent, double humidityMinPercent) =>
        DaySaturation.Of(temperatureMaxC, temperatureMinC).VapourPressureKPa(humidityMaxPercent, humidityMinPercent);

    /// <summary>Vapour pressure of a day from mean humidity, kPa. Source: [FAO56] eq. 19, p. 39.</summary>
    /// <param name="humidityMeanPercent">0 to 100 %.</param>
    public static double VapourPressureFromMeanHumidityKPa(double temperatureMaxC, double temperatureMinC, double humidityMeanPercent) =>
        Share(humidityMeanPercent) * MeanSaturationVapourPressureKPa(temperatureMaxC, temperatureMinC);

    /// <summary>Vapour pressure of an hour or less, kPa. Source: [FAO56] eq. 54, p. 74.</summary>
    /// <param name="humidityPercent">0 to 100 %.</param>
    public static double VapourPressureKPa(double temperatureC, double humidityPercent) =>
        Share(humidityPercent) * SaturationVapourPressureKPa(temperatureC);

    /// <summary>Wind speed at 2 m over grass, m/s. Source: [FAO56] eq. 47, p. 56; a speed measured at 2 m stays as it is.</summary>
    /// <param name="windSpeedMPerS">At the anemometer, 0 or more.</param>
    /// <param name="heightM">Of the anemometer above ground, 0.1 to 100 m.</param>
    public static double WindSpeed2mMPerS(double windSpeedMPerS, double heightM)
    {
        Require.Within(windSpeedMPerS, 0, 200, nameof(windSpeedMPerS));
        Require.Within(heightM, 0.1, 100, nameof(heightM));
        return heightM == ReferenceWindHeightM ? windSpeedMPerS : windSpeedMPerS * 4.87 / Math.Log((67.8 * heightM) - 5.42);
    }

    internal static double Share(double percent) => Require.Within(percent, 0, 100, nameof(percent)) / 100;
}
