namespace DailyAdjust.Reports.Words;

/// <summary>Water used.</summary>
internal static class WaterWords
{
    public const string Estimated = "estimated";
    public const string Metered = "metered";
    public const string Yesterday = "yesterday";
    public const string Month = "this month";
    public const string Season = "this season";
    public const string NotRead = "not read";

    public static string HowEstimated(int stationsWithoutFlow) =>
        "Estimated from minutes and the flow in stations.csv." + stationsWithoutFlow switch
        {
            0 => "",
            1 => " 1 station has no flow there and is not in it.",
            _ => $" {SiteWords.Count(stationsWithoutFlow)} stations have no flow there and are not in it.",
        };
}
