using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;

namespace DailyAdjust.Reports.Words;

/// <summary>What a cold or windy night asks for.</summary>
internal static class NightWords
{
    public static string Caution(NightCaution caution, SiteWords words)
    {
        string Of(string value, string limit) => caution.IsForecast ? $"{value} forecast for tonight, {limit}" : $"{value} ({limit}) last night; tonight is not forecast";
        var held = caution.Holds ? " Tonight's starts must not run." : "";
        return caution.Reason == OffReason.Cold
            ? $"Cold caution: {Of(words.Temperature(caution.Value), caution.BesideLimit(words.Temperature))}. Do not water frozen ground, and watch for ice on paths.{held}"
            : $"Wind caution: {Of(words.Speed(caution.Value), caution.BesideLimit(words.Speed))}. Sprinklers throw unevenly.{held}";
    }
}
