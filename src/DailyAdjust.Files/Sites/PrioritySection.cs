using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>priority: areas, the most important first.</summary>
internal static class PrioritySection
{
    /// <summary>All areas: those that are listed, then the others; without a list those that are called greens, then the others as they stand.</summary>
    public static IReadOnlyList<string> Read(Section root, IReadOnlyList<string> areas)
    {
        if (root.Find("priority") is not { } node)
        {
            return [.. areas.OrderBy(a => a.Contains("green", StringComparison.OrdinalIgnoreCase) ? 0 : 1)];
        }

        var listed = AreaNames.Read(node, "priority", root.Problems, areas);
        return [.. listed, .. areas.Where(a => !listed.Contains(a, StringComparer.Ordinal))];
    }
}
