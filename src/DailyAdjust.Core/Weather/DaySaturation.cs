namespace DailyAdjust.Core.Weather;

/// <summary>Saturation vapour pressure at a day's extremes, reckoned once: the air's vapour pressure and its deficit both come from it.</summary>
/// <param name="AtMaxKPa">At the highest temperature.</param>
/// <param name="AtMinKPa">At the lowest temperature.</param>
public readonly record struct DaySaturation(double AtMaxKPa, double AtMinKPa)
{
    /// <summary>es. Source: [FAO56] eq. 12, p. 36.</summary>
    public double MeanKPa => (AtMaxKPa + AtMinKPa) / 2;

    /// <param name="temperatureMaxC">-90 to 70 °C.</param>
    /// <param name="temperatureMinC">-90 to 70 °C.</param>
    public static DaySaturation Of(double temperatureMaxC, double temperatureMinC) =>
        new(Atmosphere.SaturationVapourPressureKPa(temperatureMaxC), Atmosphere.SaturationVapourPressureKPa(temperatureMinC));

    /// <summary>Vapour pressure of the day from the extremes of humidity, kPa. Source: [FAO56] eq. 17, p. 38.</summary>
    /// <param name="humidityMaxPercent">0 to 100 %, taken to go with the lowest temperature.</param>
    /// <param name="humidityMinPercent">0 to 100 %, taken to go with the highest temperature.</param>
    public double VapourPressureKPa(double humidityMaxPercent, double humidityMinPercent) =>
        ((AtMinKPa * Atmosphere.Share(humidityMaxPercent)) + (AtMaxKPa * Atmosphere.Share(humidityMinPercent))) / 2;
}
