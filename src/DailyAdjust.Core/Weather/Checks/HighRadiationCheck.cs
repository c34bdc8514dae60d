using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>Again and again a little more than a clear sky: the sensor reads high. Source: [FAO56] Annex 5; [ASCE05] app. D.</summary>
internal static class HighRadiationCheck
{
    private const double Least = 1.05;
    private const double Most = 1.15;
    private const int LeastDays = 5;

    public static WeatherCheck About { get; } = new(
        "high_radiation",
        "radiation a little above a clear sky's again and again",
        "Rs/Rso from 1.05 to 1.15 on at least 5 of the last 45 days (with Ra from 15 MJ/m²)",
        WeatherCheck.IsTold,
        "[FAO56] Annex 5 and [ASCE05] app. D; the figures common practice",
        [WeatherQuantity.SolarRadiation]);

    public static string? WordsOf(StationHistory history)
    {
        var days = history.Last(LookBack.Days, d => d.SolarRatio).Count(r => r is >= Least and <= Most);
        return days >= LeastDays
            ? string.Create(CultureInfo.InvariantCulture, $"radiation was more than a clear sky's on {days} of the last {LookBack.Days} days: the sensor reads high, or its unit is another")
            : null;
    }
}
