namespace DailyAdjust.Tests.Files;

/// <summary>The whole example site that the tests carry with them.</summary>
internal static class ExampleSiteFiles
{
    public static string Folder { get; } = Path.Combine(AppContext.BaseDirectory, "Data", "example-site");

    public static string SiteYaml { get; } = File.ReadAllText(Path.Combine(Folder, "site", "site.yaml"));

    public static string StationsCsv { get; } = File.ReadAllText(Path.Combine(Folder, "site", "stations.csv"));

    public static string LogbookCsv { get; } = File.ReadAllText(Path.Combine(Folder, "logbook.csv"));
}
