using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Files;
using DailyAdjust.Tests.Files.Sites;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>Good files that several targets begin with.</summary>
internal static class Samples
{
    private const int LinesOfWeather = 60;

    public static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site
        ?? throw new InvalidOperationException("The example site is not read.");

    /// <summary>Descriptions: site.yaml and stations.csv.</summary>
    public static IReadOnlyList<(string Yaml, string Csv)> Descriptions { get; } =
    [
        (ExampleSiteFiles.SiteYaml, ExampleSiteFiles.StationsCsv),
        (EveryKeyText.Yaml, EveryKeyText.Csv),
        (Shipped("site", "site.yaml"), Shipped("site", "stations.csv")),
    ];

    public static string Logbook { get; } = Shipped("inbox", "logbook.csv");

    /// <summary>The first lines of each file of the sample weather.</summary>
    public static IReadOnlyList<string> Weather { get; } =
    [
        .. Directory.EnumerateFiles(Folder("inbox")).Order(StringComparer.Ordinal).Where(path => !path.EndsWith("logbook.csv", StringComparison.Ordinal))
            .Select(path => string.Join('\n', File.ReadLines(path).Take(LinesOfWeather)) + "\n"),
    ];

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static string Shipped(string folder, string file) => File.ReadAllText(Path.Combine(Folder(folder), file));

    private static string Folder(string folder) => Path.Combine(AppContext.BaseDirectory, "sample-weather", folder);
}
