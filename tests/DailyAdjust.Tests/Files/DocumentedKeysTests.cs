using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Audits;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Files;

/// <summary>The pages on files name everything that the readers read.</summary>
public sealed class DocumentedKeysTests
{
    [Fact]
    public void Site_yaml_names_every_quantity_table_and_texture()
    {
        var page = Page("site-yaml.md");
        Assert.All(Enum.GetNames<WeatherQuantity>().Select(Key), key => Assert.Contains(key, page, StringComparison.Ordinal));
        Assert.All(KcTables.Keys, key => Assert.Contains(key, page, StringComparison.Ordinal));
        Assert.All(SoilTextures.Names, name => Assert.Contains(name, page, StringComparison.Ordinal));
    }

    [Fact]
    public void The_logbook_page_names_every_column_and_kind()
    {
        var page = Page("logbook.md");
        Assert.Contains(string.Join(',', LogbookColumns.All), page, StringComparison.Ordinal);
        Assert.All(KindWord.All, kind => Assert.Contains($"\n| {kind} |", page, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_example_of_the_logbook_page_is_read()
    {
        var site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

        // The page pauses a box that can; those of the example site cannot, which would be pointed out.
        site = site with { Controllers = [.. site.Controllers.Select(c => c with { PauseDays = 7 })] };
        var examples = Page("logbook.md").Split('`').Where(p => p.StartsWith("2026-", StringComparison.Ordinal) && p.Contains(',', StringComparison.Ordinal)).ToList();
        Assert.True(examples.Count >= 16, $"{examples.Count} examples");
        var text = string.Join(',', LogbookColumns.All) + "\n" + string.Join('\n', examples);
        var reading = LogbookReader.Read("logbook.md", text, site);
        Assert.True(reading.Problems.Count == 0, string.Join('\n', reading.Problems));
        Assert.Equal(examples.Count, reading.Entries.Count);
    }

    [Fact]
    public void The_example_of_the_audit_page_is_read()
    {
        var site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;
        var example = string.Join('\n', Page("audit.md").Split('\n').Where(l => l.StartsWith("    ", StringComparison.Ordinal)).Select(l => l.Trim()));
        var reading = CatchCupsReader.Read("audit.md", example, site);
        Assert.True(reading.Problems.Count == 0, string.Join('\n', reading.Problems));
        Assert.Equal(4, Assert.Single(reading.Runs).DepthsMm.Count);
    }

    private static string Key(string quantity) =>
        string.Concat(quantity.Select((c, i) => (i > 0 && char.IsAsciiLetterUpper(c) ? "_" : "") + char.ToLowerInvariant(c)));

    private static string Page(string name) => File.ReadAllText(Path.Combine(Repository.Root, "docs", name)).ReplaceLineEndings("\n");
}
