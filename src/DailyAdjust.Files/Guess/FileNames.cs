using System.Text.RegularExpressions;

namespace DailyAdjust.Files.Guess;

/// <summary>Id and file pattern from one file's name: "yard-2026-06.csv" is yard's, and so will be "yard-2026-07.csv".</summary>
internal static class FileNames
{
    private const RegexOptions Plainly = RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking;
    private const int LongestId = 24;

    private static readonly Regex Number = new("[0-9][0-9._-]*", Plainly);
    private static readonly Regex NoId = new("[^a-z0-9-]+", Plainly);

    public static string Pattern(string file)
    {
        // A packed file's name has two endings.
        var name = Path.GetFileName(file);
        var packed = Path.GetExtension(name) is ".gz" or ".zip" ? Path.GetExtension(name) : "";
        var bare = name[..^packed.Length];
        var stem = Path.GetFileNameWithoutExtension(bare);
        var pattern = Number.Replace(stem, "*");
        return (pattern.Contains('*', StringComparison.Ordinal) ? pattern : pattern + "*") + Path.GetExtension(bare) + packed;
    }

    public static string Id(string file)
    {
        var stem = Path.GetFileName(file).Split('.')[0];
        var id = NoId.Replace(Number.Replace(stem, "-"), "-").Trim('-').ToLowerInvariant();
        id = id.Length > LongestId ? id[..LongestId].TrimEnd('-') : id;
        return id is "" or "site" or "pump" or "forecast" || !Names.IsId(id) ? "station" : id;
    }
}
