using System.Globalization;
using DailyAdjust.Core.Morning;

namespace DailyAdjust.Service.Sites;

/// <summary>What a result depends on beside its inputs; both stand in every morning's record.</summary>
public static class CalculationVersions
{
    private static readonly string[] ZoneLists = ["tzdata.zi", "+VERSION"];

    public static string Calculation { get; } = MorningCalculation.Version.ToString(CultureInfo.InvariantCulture);

    /// <summary>Version of the system's time-zone data, such as 2026a; the system's own name where it keeps none.</summary>
    public static string TimeZones { get; } = FindTimeZones();

    private static string FindTimeZones()
    {
        // Where .NET itself looks for zones.
        var folder = Environment.GetEnvironmentVariable("TZDIR") is { Length: > 0 } named ? named : "/usr/share/zoneinfo";
        foreach (var list in ZoneLists.Select(name => Path.Combine(folder, name)).Where(File.Exists))
        {
            var first = File.ReadLines(list).FirstOrDefault() ?? "";
            return first.Replace("# version ", "", StringComparison.Ordinal).Trim();
        }

        return Environment.OSVersion.VersionString;
    }
}
