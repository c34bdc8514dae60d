namespace DailyAdjust.Files.Sites;

/// <summary>
/// Available water by soil texture, a published range of which the middle is taken, mm of water per m of depth.
/// Source: [FAO56] Table 19, p. 144. Field capacity is not taken from it: its range is wider than what a probe tells apart.
/// </summary>
public static class SoilTextures
{
    private static readonly (string Texture, double FromMmPerM, double ToMmPerM)[] Table =
    [
        ("sand", 50, 110),
        ("loamy sand", 60, 120),
        ("sandy loam", 110, 150),
        ("loam", 130, 180),
        ("silt loam", 130, 190),
        ("silty clay loam", 130, 180),
        ("silty clay", 130, 190),
        ("clay", 120, 200),
    ];

    public static IReadOnlyList<string> Names { get; } = [.. Table.Select(t => t.Texture)];

    internal static string Plain(string texture) => texture.Replace('-', ' ').Replace('_', ' ').Trim();

    /// <summary>The range of a texture, mm/m, or null; blanks, hyphens and underscores are alike.</summary>
    public static (double FromMmPerM, double ToMmPerM)? Find(string texture)
    {
        var plain = Plain(texture);
        foreach (var row in Table)
        {
            if (string.Equals(row.Texture, plain, StringComparison.OrdinalIgnoreCase))
            {
                return (row.FromMmPerM, row.ToMmPerM);
            }
        }

        return null;
    }
}
