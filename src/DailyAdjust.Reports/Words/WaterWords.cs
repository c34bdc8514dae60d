using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Water;

namespace DailyAdjust.Reports.Words;

/// <summary>Water used.</summary>
internal static class WaterWords
{
    public static readonly Phrase Estimated = new("estimated");
    public static readonly Phrase Metered = new("metered");
    public static readonly Phrase Yesterday = new("yesterday");
    public static readonly Phrase Month = new("this month");
    public static readonly Phrase Season = new("this season");
    public static readonly Phrase NotRead = new("not read");
    public static readonly Phrase PassedTitle = new("Water limits passed");

    /// <summary>A sentence for each limit that was passed this season.</summary>
    public static IEnumerable<Phrase> Passed(WaterUsed water, SiteWords words) => water.Limits.Where(l => l.Over > 0).Select(l => SummaryWords.Limit(l, words, water.SeasonFrom));

    /// <summary>The readings between which the meter counted: "30 Jun to 13 Jul".</summary>
    public static Phrase Span(MeteredWater metered) => $"{SiteWords.DayShortMonth(metered.From)} to {SiteWords.DayShortMonth(metered.To)}";

    public static Phrase HowEstimated(int stationsWithoutFlow) =>
        Phrase.Sentences(new("Estimated from minutes and the flow in stations.csv."), stationsWithoutFlow switch
        {
            0 => Phrase.Empty,
            1 => new("1 station has no flow there and is not in it."),
            _ => $"{SiteWords.Count(stationsWithoutFlow)} stations have no flow there and are not in it.",
        });
}
