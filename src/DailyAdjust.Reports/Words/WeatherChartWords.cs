using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Reports.Words;

/// <summary>What the chart of the last days' weather says, for eyes and for ears.</summary>
internal static class WeatherChartWords
{
    public static readonly Phrase KeyEto = new("ETo.");

    /// <summary>Of the site's first gauge; null = unknown.</summary>
    public static double? RainMm(WeatherDay day) => day.Rain.Count > 0 ? day.Rain[0].RainMm : null;

    public static Phrase Heading(IReadOnlyList<WeatherDay> days) => days.Count == 1 ? new Phrase("ETo and rain of the last day") : $"ETo and rain of the last {SiteWords.Count(days.Count)} days";

    public static Phrase KeyRain(IReadOnlyList<WeatherDay> days) => days[^1].Rain.Count > 0 ? $"rain, gauge {days[^1].Rain[0].Gauge}." : new Phrase("rain.");

    public static Phrase Title(IReadOnlyList<WeatherDay> days) => $"{Heading(days)}, {SiteWords.Date(days[0].Date)} to {SiteWords.Date(days[^1].Date)}";

    public static Phrase Description(IReadOnlyList<WeatherDay> days, SiteWords words)
    {
        var known = days.Where(d => d.EtoMm is not null).ToList();
        var eto = known.Count == 0
            ? new Phrase("ETo is unknown.")
            : $"ETo {words.DepthOf(known.Sum(d => d.EtoMm!.Value))} in all, at most {words.DepthOf(known.Max(d => d.EtoMm!.Value))} on {SiteWords.Date(known.MaxBy(d => d.EtoMm!.Value)!.Date)}.";
        var rain = days.Select(RainMm).ToList();
        var unknown = rain.Count(r => r is null);
        var fell = unknown < rain.Count ? $"{words.DepthOf(rain.Sum(r => r ?? 0))} in all{(unknown > 0 ? ", " : "")}" : Phrase.Empty;
        return $"{eto} Rain {fell}{(unknown > 0 ? $"unknown on {Phrase.Count(unknown, "day", "days")}" : Phrase.Empty)}.";
    }
}
