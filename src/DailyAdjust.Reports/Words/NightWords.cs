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
            ? $"Cold caution, {caution.BesideLimit(words.Temperature)}: {words.Temperature(caution.Value)} {when}. Do not water frozen ground, and watch for ice on paths.{held}"
            : $"Wind caution, {caution.BesideLimit(words.Speed)}: {words.Speed(caution.Value)} {when}. Sprinklers throw unevenly.{held}";
    }
}
