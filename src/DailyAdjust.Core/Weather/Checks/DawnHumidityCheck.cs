using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>
/// Over watered grass the air nears saturation towards dawn, and dries by day: a sensor that never comes near it, or never leaves it, has
/// aged. Source: [FAO56] Annex 5; [ASCE05] app. D.
/// </summary>
internal static class DawnHumidityCheck
{
    private const double NearSaturationPercent = 80;
    private const double AlwaysWetPercent = 97;
    private const int Days = 30;
    private const int LeastDays = 20;
    private const int WetDays = 10;

    public static WeatherCheck About { get; } = new(
        "dawn_humidity",
        "humidity that never nears saturation towards dawn, or never leaves it",
        "the highest of the last 30 days (at least 20 known) is below 80 %, or the lowest of each of the last 10 days is 97 % or more",
        WeatherCheck.IsTold,
        "[FAO56] Annex 5 and [ASCE05] app. D; the figures common practice",
        [WeatherQuantity.RelativeHumidity]);

    public static string? WordsOf(StationHistory history)
    {
        var highest = history.Last(Days, d => d.HumidityMaxPercent);
        if (highest.Count >= LeastDays && highest.Max() < NearSaturationPercent)
        {
            return string.Create(
                CultureInfo.InvariantCulture,
                $"humidity has not been above {highest.Max():0} % in {highest.Count} days; over watered grass it nears 100 % towards dawn: the sensor may have aged, or stand over dry ground");
        }

        var lowest = history.Last(WetDays, d => d.HumidityMinPercent);
        return lowest.Count == WetDays && lowest.Min() >= AlwaysWetPercent
            ? string.Create(CultureInfo.InvariantCulture, $"humidity has not been below {lowest.Min():0} % in {WetDays} days: the sensor may be wet or worn")
            : null;
    }
}
