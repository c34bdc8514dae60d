using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

// Keys of advice.json: what is forecast. Temperatures °C, wind m/s.

internal sealed record ForecastJson(string Issued, bool TooOld, IReadOnlyList<ForecastDayJson> Days)
{
    public static ForecastJson? Of(SheetForecast? forecast, SiteClock clock) => forecast is null ? null : new(
        Local(forecast.Issued, clock),
        forecast.TooOld,
        [.. forecast.Days.Select(Day)]);

    private static ForecastDayJson Day(ForecastDay day) => new(
        CodeWords.Date(day.Date),
        Number(day.DayRain?.Mm),
        Number(day.DayRain?.ChancePercent),
        Number(day.AirTemperatureMaxC),
        Number(day.AirTemperatureMinC),
        new ForecastNightJson(
            Number(day.Night.Rain?.Mm),
            Number(day.Night.Rain?.ChancePercent),
            Number(day.Night.LowestTemperatureC),
            Number(day.Night.HighestWindMPerS)));
}

internal sealed record ForecastDayJson(
    string Date,
    double? RainMm,
    double? RainChancePercent,
    double? TemperatureMaxC,
    double? TemperatureMinC,
    ForecastNightJson Night);

internal sealed record ForecastNightJson(double? RainMm, double? RainChancePercent, double? TemperatureMinC, double? WindMPerS);
