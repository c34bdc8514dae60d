using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>What a station knows of a whole day; NaN = unknown, because less than 90 % of the intervals (radiation: of daylight) are there.</summary>
internal sealed record DayInputs
{
    /// <summary>Share of a day's intervals (radiation: of daylight) without which the day is incomplete.</summary>
    public const double LeastShare = 0.9;

    /// <summary>Guards the comparison of two quotients.</summary>
    public const double ShareTolerance = 1e-9;

    public double AirTemperatureMaxC { get; private init; } = double.NaN;

    public double AirTemperatureMinC { get; private init; } = double.NaN;

    public double RelativeHumidityMaxPercent { get; private init; } = double.NaN;

    public double RelativeHumidityMinPercent { get; private init; } = double.NaN;

    public double RelativeHumidityMeanPercent { get; private init; } = double.NaN;

    public double DewPointC { get; private init; } = double.NaN;

    /// <summary>At the anemometer, m/s.</summary>
    public double WindSpeedMPerS { get; private init; } = double.NaN;

    /// <summary>Sum, with its missing daylight made up for.</summary>
    public DaylightSum SolarRadiationMJPerM2 { get; private init; } = DaylightSum.Unknown;

    public DaylightSum SunshineH { get; private init; } = DaylightSum.Unknown;

    /// <summary>The station's own.</summary>
    public DaylightSum ReferenceEtMm { get; private init; } = DaylightSum.Unknown;

    public bool KnowsTemperature => !double.IsNaN(AirTemperatureMaxC) && !double.IsNaN(AirTemperatureMinC);

    /// <summary>Of a station that reports once a day.</summary>
    public static DayInputs OfDaily(StationWindow window)
    {
        if (window.OfDay.Count == 0)
        {
            return new DayInputs();
        }

        var r = window.OfDay[^1];
        return new DayInputs
        {
            AirTemperatureMaxC = r.AirTemperatureMaxC,
            AirTemperatureMinC = r.AirTemperatureMinC,
            RelativeHumidityMaxPercent = r.RelativeHumidityMaxPercent,
            RelativeHumidityMinPercent = r.RelativeHumidityMinPercent,
            RelativeHumidityMeanPercent = r.RelativeHumidityPercent,
            DewPointC = r.DewPointC,
            WindSpeedMPerS = r.WindSpeedMPerS,
            SolarRadiationMJPerM2 = new(r.SolarRadiationMJPerM2, TimeSpan.Zero),
            SunshineH = new(r.SunshineH, TimeSpan.Zero),
            ReferenceEtMm = new(r.ReferenceEtMm, TimeSpan.Zero),
        };
    }

    /// <summary>Of a station that reports intervals of an hour or less.</summary>
    public static DayInputs OfIntervals(StationWindow window)
    {
        var temperature = Enough(window, WeatherQuantity.AirTemperature);
        var humidity = Enough(window, WeatherQuantity.RelativeHumidity);
        return new DayInputs
        {
            AirTemperatureMaxC = temperature.Count == 0 ? double.NaN
                : Most(temperature.Max(s => s.Value), window.OfDay.Select(r => r.AirTemperatureMaxC)),
            AirTemperatureMinC = temperature.Count == 0 ? double.NaN
                : Least(temperature.Min(s => s.Value), window.OfDay.Select(r => r.AirTemperatureMinC)),
            RelativeHumidityMaxPercent = humidity.Count == 0 ? double.NaN
                : Most(humidity.Max(s => s.Value), window.OfDay.Select(r => r.RelativeHumidityMaxPercent)),
            RelativeHumidityMinPercent = humidity.Count == 0 ? double.NaN
                : Least(humidity.Min(s => s.Value), window.OfDay.Select(r => r.RelativeHumidityMinPercent)),
            DewPointC = Mean(Enough(window, WeatherQuantity.DewPoint)),
            WindSpeedMPerS = Mean(Enough(window, WeatherQuantity.WindSpeed)),
            SolarRadiationMJPerM2 = DaylightSum.Of(window, WeatherQuantity.SolarRadiation),
            SunshineH = DaylightSum.Of(window, WeatherQuantity.Sunshine),
            ReferenceEtMm = DaylightSum.Of(window, WeatherQuantity.ReferenceEt),
        };
    }

    /// <summary>The day's samples; none if they are less than 90 % of the day.</summary>
    private static List<Sample> Enough(StationWindow window, WeatherQuantity quantity)
    {
        List<Sample> ofDay = [.. window.Series(quantity).Where(s => window.Day.Holds(s.Begin))];
        var share = (double)ofDay.Sum(s => s.Length.Ticks) / window.Day.Length.Ticks;
        return share >= LeastShare - ShareTolerance ? ofDay : [];
    }

    private static double Mean(List<Sample> samples) =>
        samples.Count == 0 ? double.NaN : samples.Sum(s => s.Value * s.Length.Ticks) / samples.Sum(s => s.Length.Ticks);

    private static double Most(double mean, IEnumerable<double> extremes) =>
        extremes.Where(e => !double.IsNaN(e)).Append(mean).Max();

    private static double Least(double mean, IEnumerable<double> extremes) =>
        extremes.Where(e => !double.IsNaN(e)).Append(mean).Min();
}
