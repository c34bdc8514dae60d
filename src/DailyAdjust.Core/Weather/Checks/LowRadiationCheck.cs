using System.Globalization;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>In six weeks some day is nearly clear; if the best one stays far below a clear sky, the sensor is dirty, tilted or shaded. Source: [FAO56] Annex 5; [ASCE05] app. D.</summary>
internal static class LowRadiationCheck
{
    private const double LeastOfBest = 0.85;
    private const int LeastDays = 20;

    public static WeatherCheck About { get; } = new(
        "low_radiation",
        "radiation that never comes near a clear sky's",
        "the best Rs/Rso of the last 45 days (at least 20 known, with Ra from 15 MJ/m²) is below 0.85",
        WeatherCheck.IsTold,
        "[FAO56] Annex 5 and [ASCE05] app. D; the figures common practice",
        [WeatherQuantity.SolarRadiation]);

    public static string? WordsOf(StationHistory history)
    {
        var ratios = history.Last(LookBack.Days, d => d.SolarRatio);
        return ratios.Count >= LeastDays && ratios.Max() < LeastOfBest
            ? string.Create(CultureInfo.InvariantCulture, $"the clearest of {ratios.Count} days brought {ratios.Max() * 100:0} % of a clear sky's radiation: the sensor may be dirty, tilted or shaded")
            : null;
    }
}
