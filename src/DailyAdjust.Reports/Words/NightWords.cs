using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;

namespace DailyAdjust.Reports.Words;

/// <summary>What a cold or windy night asks for.</summary>
internal static class NightWords
{
    public static string Caution(NightCaution caution, SiteWords words)
    {
        var when = caution.IsForecast ? "forecast for tonight" : "last night; tonight is not forecast";
        var held = caution.Holds ? " Tonight's starts must not run." : "";
        return caution.Reason == OffReason.Cold
            ? $"Cold caution: {words.Temperature(caution.Value)} {when}, {Beyond("below", words.Temperature(caution.Value), words.Temperature(caution.Limit))}. Do not water frozen ground, and watch for ice on paths.{held}"
            : $"Wind caution: {words.Speed(caution.Value)} {when}, {Beyond("above", words.Speed(caution.Value), words.Speed(caution.Limit))}. Sprinklers throw unevenly.{held}";
    }

    /// <summary>"below 40 °F"; "just below 40 °F" where both read the same.</summary>
    private static string Beyond(string side, string value, string limit) => $"{(string.Equals(value, limit, StringComparison.Ordinal) ? "just " : "")}{side} {limit}";
}
