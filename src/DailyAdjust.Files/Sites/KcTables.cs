namespace DailyAdjust.Files.Sites;

/// <summary>
/// Published turf coefficients by month that an area may name instead of twelve numbers of its own, January first.
/// Source: [UC] monthly coefficients for reference ET; [UC8395] share of reference ET by quality; [FAO56] Table 12, mid-season;
/// [AAMLID] from the second day after watering.
/// </summary>
public static class KcTables
{
    private static readonly (string Key, double[] Kc)[] Tables =
    [
        ("uc-cool-season", [0.61, 0.64, 0.75, 1.04, 0.95, 0.88, 0.94, 0.86, 0.74, 0.75, 0.69, 0.60]),
        ("uc-warm-season", [0.55, 0.54, 0.76, 0.72, 0.79, 0.68, 0.71, 0.71, 0.62, 0.54, 0.58, 0.55]),
        ("cool-season-optimal", AllYear(0.80)),
        ("cool-season-deficit", AllYear(0.60)),
        ("warm-season-optimal", AllYear(0.60)),
        ("warm-season-deficit", AllYear(0.40)),
        ("fao56-cool-season-mid", AllYear(0.95)),
        ("fao56-warm-season-mid", AllYear(0.85)),
        ("golf-green-3-5mm", AllYear(0.81)),
        ("golf-fairway-15mm", AllYear(0.91)),
    ];

    public static IReadOnlyList<string> Keys { get; } = [.. Tables.Select(t => t.Key)];

    /// <summary>Twelve coefficients, or null where no table has that name.</summary>
    public static IReadOnlyList<double>? Find(string key) =>
        Tables.Where(t => string.Equals(t.Key, key, StringComparison.OrdinalIgnoreCase)).Select(t => t.Kc).FirstOrDefault();

    private static double[] AllYear(double kc) => [.. Enumerable.Repeat(kc, 12)];
}
