using DailyAdjust.Core.Phrases;

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

    public static Phrase HowEstimated(int stationsWithoutFlow) =>
        Phrase.Sentences(new("Estimated from minutes and the flow in stations.csv."), stationsWithoutFlow switch
        {
            0 => Phrase.Empty,
            1 => new("1 station has no flow there and is not in it."),
            _ => $"{SiteWords.Count(stationsWithoutFlow)} stations have no flow there and are not in it.",
        });
}
