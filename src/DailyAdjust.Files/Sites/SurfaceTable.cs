using DailyAdjust.Core.Quantities;

namespace DailyAdjust.Files.Sites;

/// <summary>
/// How fast a texture takes water in, and what may stand on it before it runs off, by slope. Source: landscape irrigation handbook
/// values, from memory but for the intake rates and the first column; six of them agree with the virtual zones of the trade's test protocol.
/// </summary>
public static class SurfaceTable
{
    private static readonly double[] SlopesFromPercent = [0, 3, 6, 12];

    private static readonly (string Texture, double IntakeInPerHour, double[] StorageIn)[] Table =
    [
        ("sand", 0.60, [0.40, 0.35, 0.30, 0.25]),
        ("loamy sand", 0.50, [0.36, 0.30, 0.26, 0.22]),
        ("sandy loam", 0.40, [0.33, 0.29, 0.24, 0.20]),
        ("loam", 0.35, [0.30, 0.25, 0.21, 0.17]),
        ("clay loam", 0.20, [0.26, 0.22, 0.18, 0.15]),
        ("silty clay", 0.15, [0.23, 0.19, 0.16, 0.13]),
        ("clay", 0.10, [0.20, 0.15, 0.10, 0.10]),
    ];

    public static IReadOnlyList<string> Textures { get; } = [.. Table.Select(t => t.Texture)];

    /// <param name="texture">Blanks, hyphens and underscores are alike.</param>
    /// <param name="slopePercent">Rise over run, 0 or more: 0-3, 4-6, 7-12, 13 and more.</param>
    /// <returns>mm/h and mm; null = the texture is not in the table.</returns>
    public static (double IntakeMmPerHour, double StorageMm)? Find(string texture, double slopePercent)
    {
        foreach (var row in Table.Where(t => string.Equals(t.Texture, SoilTextures.Plain(texture), StringComparison.OrdinalIgnoreCase)))
        {
            var column = Array.FindLastIndex(SlopesFromPercent, from => slopePercent > from || from == 0);
            return (row.IntakeInPerHour * Depth.MmPerInch, row.StorageIn[column] * Depth.MmPerInch);
        }

        return null;
    }
}
