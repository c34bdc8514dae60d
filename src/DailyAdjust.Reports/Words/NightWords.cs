using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What a cold or windy night asks for.</summary>
internal static class NightWords
{
    public static Phrase Caution(NightCaution caution, SiteWords words)
    {
        Phrase Of(string value, Phrase limit) => caution.IsForecast ? Phrase.Of($"{value} forecast for tonight, {limit}") : $"{value} ({limit}) last night; tonight is not forecast";
        var held = caution.Holds ? new Phrase(" Tonight's starts must not run.") : Phrase.Empty;
        return caution.Reason == OffReason.Cold
            ? Phrase.Of($"Cold caution: {Of(words.Temperature(caution.Value), caution.BesideLimit(words.Temperature))}. Do not water frozen ground, and watch for ice on paths.{held}")
            : $"Wind caution: {Of(words.Speed(caution.Value), caution.BesideLimit(words.Speed))}. Sprinklers throw unevenly.{held}";
    }
}
