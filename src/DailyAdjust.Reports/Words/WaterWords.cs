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
    public const string HowEstimated = "Estimated from minutes and the flow in stations.csv.";

    public static string WithoutFlow(int stations) => stations == 1
        ? "1 station has no flow there and is not in the estimate."
        : $"{SiteWords.Count(stations)} stations have no flow there and are not in the estimate.";
}
