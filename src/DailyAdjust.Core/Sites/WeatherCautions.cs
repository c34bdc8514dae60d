using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Core.Sites;

/// <summary>When a night is too cold or too windy to water, and whether that holds its starts or is only told.</summary>
public sealed record WeatherCautions
{
    /// <summary>Below this air temperature, °C. 40 °F unless the site says otherwise. Source: [CSU7211] "water only when air temperatures are above 40 °F".</summary>
    public double ColdBelowC { get; init; } = (40 - 32) / 1.8;

    public bool ColdHolds { get; init; }

    /// <summary>Above this wind speed, m/s. 10 mph unless the site says otherwise. Source: common practice.</summary>
    public double WindAboveMPerS { get; init; } = 10 * Units.MPerSPerMph;

    public bool WindHolds { get; init; }
}
