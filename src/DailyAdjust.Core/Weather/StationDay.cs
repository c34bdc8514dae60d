namespace DailyAdjust.Core.Weather;

/// <summary>What later days' checks need to know of one station's day.</summary>
/// <param name="Station">Weather station.</param>
/// <param name="AirTemperatureMeanC">Middle of the highest and lowest temperature, on a grid of 0.01 °C, whatever the other stations say; null = unknown. Source: [FAO56] eq. 9, p. 33.</param>
/// <param name="HumidityMaxPercent">On a grid of 0.1 %; null = unknown.</param>
/// <param name="HumidityMinPercent">On a grid of 0.1 %; null = unknown.</param>
/// <param name="SolarRatio">Rs/Rso as the sensor has it, on a grid of 0.001; null = unknown, or the sun stands too low to tell (Ra below 15 MJ/m²).</param>
/// <param name="SolarCentroidMinutes">How long after solar noon the middle of the day's radiation lies, on a grid of 0.1 min; null = unknown, a daily station, or the sun too low.</param>
public sealed record StationDay(
    string Station, double? AirTemperatureMeanC, double? HumidityMaxPercent, double? HumidityMinPercent, double? SolarRatio, double? SolarCentroidMinutes)
{
    /// <summary>Below it the formula of clear-sky radiation promises more than the low sun gives, MJ/m² per day. Common practice.</summary>
    private const double LeastRaMJPerM2 = 15;

    internal static StationDay Of(StationWindow window, DayInputs inputs)
    {
        var high = window.Sun.ExtraterrestrialMJPerM2 >= LeastRaMJPerM2;
        return new(
            window.Source.Id,
            OnGrid((inputs.AirTemperatureMaxC + inputs.AirTemperatureMinC) / 2, 2),
            OnGrid(inputs.RelativeHumidityMaxPercent, 1),
            OnGrid(inputs.RelativeHumidityMinPercent, 1),
            high ? OnGrid(window.Solar.Ratio, 3) : null,
            high ? OnGrid(window.Solar.CentroidMinutes, 1) : null);
    }

    private static double? OnGrid(double value, int decimals) =>
        double.IsNaN(value) ? null : Math.Round(value, decimals, MidpointRounding.AwayFromZero);
}
