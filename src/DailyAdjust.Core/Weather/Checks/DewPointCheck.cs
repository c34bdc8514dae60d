using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A dew point above the air's temperature.</summary>
internal static class DewPointCheck
{
    /// <summary>What two sensors may differ by in saturated air, °C. Common practice.</summary>
    private const double AboveAirC = 1;

    public static WeatherCheck About { get; } = new(
        "dew_point",
        "a dew point above the air temperature of the same interval (of a day without a mean: above its maximum)",
        "by more than 1 °C",
        WeatherCheck.IsSetAside,
        "common practice",
        [WeatherQuantity.DewPoint]);

    public static Reading Keep(Reading r, CheckNotes notes) =>
        r.DewPointC > (double.IsNaN(r.AirTemperatureC) ? r.AirTemperatureMaxC : r.AirTemperatureC) + AboveAirC
        && notes.IsAside(About, r, WeatherQuantity.DewPoint, r.DewPointC, "°C", "the dew point is above the air temperature")
            ? r with { DewPointC = double.NaN }
            : r;
}
