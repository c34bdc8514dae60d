using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>What is forecast, in words: it is never told as something that was measured.</summary>
internal static class ForecastWords
{
    public static readonly Phrase Title = new("Forecast");
    public static readonly Phrase Chance = new("chance");
    public static readonly Phrase NotForecast = new("not forecast");

    /// <summary>"Forecast made at 04:12 today. Nothing of it was measured, and its rain is not booked."</summary>
    public static Phrase Made(SheetForecast forecast, SiteWords words) => forecast.TooOld
        ? Phrase.Of($"The newest forecast was made at {words.When(forecast.Issued)}: too old, so nothing on this sheet rests on it.")
        : $"Forecast made at {words.When(forecast.Issued)}. Nothing of it was measured, and its rain is not booked.";

    /// <summary>"0.10 in", "not forecast".</summary>
    public static Phrase Amount(RainAhead? rain, SiteWords words) => rain?.Mm is { } mm ? words.DepthOf(mm) : NotForecast;

    /// <summary>"40 %", "not forecast".</summary>
    public static Phrase ChanceOf(RainAhead? rain) => rain?.ChancePercent is { } chance ? Phrase.Verbatim(SiteWords.Percent(Math.Round(chance))) : NotForecast;

    /// <summary>"rain 0.10 in, chance 40 %".</summary>
    public static Phrase Rain(RainAhead? rain, SiteWords words) => (rain?.Mm, rain?.ChancePercent) switch
    {
        (null, null) => $"rain {NotForecast}",
        (null, _) => $"rain, amount {NotForecast}, chance {ChanceOf(rain)}",
        (_, null) => $"rain {Amount(rain, words)}",
        _ => $"rain {Amount(rain, words)}, chance {ChanceOf(rain)}",
    };

    public static Phrase LowHigh(ForecastDay day, SiteWords words) =>
        day is { AirTemperatureMinC: { } low, AirTemperatureMaxC: { } high } ? Phrase.Verbatim($"{words.Temperature(low)}, {words.Temperature(high)}") : NotForecast;

    /// <summary>"Tonight (18:00 to 09:00): rain 0.30 in, chance 80 %; lowest 34 °F; wind up to 12 mph."</summary>
    public static Phrase Night(ForecastNight night, SiteWords words)
    {
        var lowest = night.LowestTemperatureC is { } low ? Phrase.Verbatim(words.Temperature(low)) : NotForecast;
        var wind = night.HighestWindMPerS is { } most ? $"up to {words.Speed(most)}" : NotForecast;
        return $"Tonight ({SiteWords.Clock(ForecastDays.NightBegins)} to {SiteWords.Clock(ForecastDays.NightEnds)}): {Rain(night.Rain, words)}; lowest {lowest}; wind {wind}.";
    }

    /// <summary>What cold and wind of the night ask for; empty where they ask for nothing.</summary>
    public static IEnumerable<Phrase> Cautions(ForecastNight night, SiteWords words)
    {
        if (night.MayFreeze)
        {
            yield return $"Frost caution, at or below {words.Temperature(ForecastNight.FrostC)}: keep feet and carts off frosted turf, and water off paths that may freeze.";
        }

        if (night.SprayMayDrift)
        {
            yield return $"Spray drift caution, wind above {words.Speed(ForecastNight.DriftMPerS)}: the product's label decides.";
        }
    }

    /// <summary>"Tue 9 June: rain 0.20 in, chance 60 %, 52 °F, 74 °F".</summary>
    public static Phrase Day(ForecastDay day, SiteWords words) =>
        $"{(day.Date == words.SheetDate ? new Phrase("Today") : SiteWords.Date(day.Date))}: {Rain(day.DayRain, words)}{(day.AirTemperatureMaxC is null ? Phrase.Empty : $"; {LowHigh(day, words)}")}";
}
