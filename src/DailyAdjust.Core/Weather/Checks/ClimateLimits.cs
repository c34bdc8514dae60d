using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather.Checks;

/// <summary>A quantity's limits.</summary>
/// <param name="BorneLeast">The least that the equations bear: it holds where the site overrules the check.</param>
/// <param name="BorneMost">The most that they bear.</param>
internal sealed record ValueLimit(
    WeatherQuantity Quantity, string Unit, double Least, double Most, double BorneLeast, double BorneMost, Func<Reading, double> Get, Func<Reading, double, Reading> With);

/// <summary>Limits by latitude and half of the year. Temperatures and dew point: [WMO305] error limits of surface data, from memory; wind: common practice.</summary>
internal sealed class ClimateLimits
{
    /// <summary>Between the two bands of latitude, degrees. Source: [WMO305].</summary>
    public const double BandDeg = 45;

    /// <summary>The most that two temperatures within their limits can lie apart, °C.</summary>
    public const double WidestTemperatureRangeC = 70 - -90;

    private static readonly ClimateLimits LowWinter = new(-40, 50, -45, 35);
    private static readonly ClimateLimits LowSummer = new(-30, 60, -30, 40);

    // The guide has -99 °C as the lowest dew point; below -90 °C the vapour pressure equation ends.
    private static readonly ClimateLimits HighWinter = new(-90, 40, -90, 35);
    private static readonly ClimateLimits HighSummer = new(-40, 50, -40, 40);

    private ClimateLimits(double airLeastC, double airMostC, double dewLeastC, double dewMostC)
    {
        ValueLimit Degrees(WeatherQuantity quantity, double least, double most, Func<Reading, double> get, Func<Reading, double, Reading> with) =>
            new(quantity, "°C", least, most, -90, 70, get, with);
        All =
        [
            Degrees(WeatherQuantity.AirTemperature, airLeastC, airMostC, r => r.AirTemperatureC, (r, v) => r with { AirTemperatureC = v }),
            Degrees(WeatherQuantity.AirTemperatureMax, airLeastC, airMostC, r => r.AirTemperatureMaxC, (r, v) => r with { AirTemperatureMaxC = v }),
            Degrees(WeatherQuantity.AirTemperatureMin, airLeastC, airMostC, r => r.AirTemperatureMinC, (r, v) => r with { AirTemperatureMinC = v }),
            Degrees(WeatherQuantity.DewPoint, dewLeastC, dewMostC, r => r.DewPointC, (r, v) => r with { DewPointC = v }),
            new(WeatherQuantity.WindSpeed, "m/s", 0, 75, 0, 200, r => r.WindSpeedMPerS, (r, v) => r with { WindSpeedMPerS = v }),
        ];
    }

    public IReadOnlyList<ValueLimit> All { get; }

    /// <summary>The half of the year with the higher sun is April to September in the north, October to March in the south.</summary>
    public static ClimateLimits Of(double latitudeDeg, DateOnly date)
    {
        var summer = date.Month is >= 4 and <= 9 == latitudeDeg >= 0;
        return Math.Abs(latitudeDeg) < BandDeg ? (summer ? LowSummer : LowWinter) : (summer ? HighSummer : HighWinter);
    }
}
