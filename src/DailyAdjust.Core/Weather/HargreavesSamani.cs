using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>Reference ET of a day from temperatures alone. Source: [FAO56] eq. 52, p. 64.</summary>
public static class HargreavesSamani
{
    /// <summary>mm of water evaporated by 1 MJ/m². Source: [FAO56] table 3, p. 20.</summary>
    public const double MmPerMJPerM2 = 0.408;

    /// <summary>Reference ET, mm per day, 0 or more.</summary>
    /// <param name="temperatureMaxC">°C.</param>
    /// <param name="temperatureMinC">°C, at most the highest at most 120 below it.</param>
    /// <param name="extraterrestrialMJPerM2Day">Ra, 0 or more.</param>
    public static double EtoMm(double temperatureMaxC, double temperatureMinC, double extraterrestrialMJPerM2Day)
    {
        var range = Require.Within(temperatureMaxC - temperatureMinC, 0, ClimateLimits.WidestTemperatureRangeC, nameof(temperatureMaxC));
        var mean = (temperatureMaxC + temperatureMinC) / 2;
        return Math.Max(0, 0.0023 * (mean + 17.8) * Math.Sqrt(range) * MmPerMJPerM2 * extraterrestrialMJPerM2Day);
    }
}
