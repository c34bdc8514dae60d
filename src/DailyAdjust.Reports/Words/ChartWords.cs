using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What the charts say, for eyes and for ears.</summary>
internal static class ChartWords
{
    public static readonly Phrase KeyBelowFull = new("how far the root zone is below full: up is full, down is dry.");
    public static readonly Phrase KeyLimit = new("allowable: past it the grass suffers.");
    public static readonly Phrase KeyRain = new("rain.");
    public static readonly Phrase KeyIrrigation = new("irrigation that reached the roots.");
    public static readonly Phrase Full = new("full");
    public const string UnknownRain = "?";
    public static readonly Phrase NoDays = new("No days yet.");

    public static Phrase Heading(AreaMoisture area, SiteWords words) => area.Days.Count == 0
        ? NoDays
        : $"{words.DepthOf(area.Days[^1].DepletionMm)} below full, {words.DepthOf(area.AllowableMm)} allowable";

    public static Phrase Title(AreaMoisture area) => $"{area.Area}: how far the root zone is below full, rain and irrigation";

    public static Phrase Description(AreaMoisture area, SiteWords words)
    {
        if (area.Days.Count == 0)
        {
            return NoDays;
        }

        var driest = area.Days.MaxBy(d => d.DepletionMm)!;
        var beyond = area.Days.Count(d => d.DepletionMm > area.AllowableMm);
        return $"From {SiteWords.Date(area.Days[0].Date)} to {SiteWords.Date(area.Days[^1].Date)}: at most {words.DepthOf(driest.DepletionMm)} below full, on {SiteWords.Date(driest.Date)}; "
            + $"allowable {words.DepthOf(area.AllowableMm)}, {(beyond == 0 ? new Phrase("never") : Phrase.Count(beyond, "day", "days"))} past it. "
            + $"Rain {words.DepthOf(area.Days.Sum(d => d.RainMm ?? 0))}, irrigation {words.DepthOf(area.Days.Sum(d => d.IrrigationMm))} in all.";
    }
}
