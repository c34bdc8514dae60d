using DailyAdjust.Files;
using DailyAdjust.Files.Logbook;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Files;

/// <summary>The site that the demo plays on loads without an error, and so does every line of its logbook.</summary>
public sealed class SampleWeatherTests
{
    [Fact]
    public void The_demo_s_site_and_logbook_load()
    {
        var folder = Path.Combine(Repository.Root, "sample-weather");
        var reading = SiteReader.Read(
            "site.yaml",
            File.ReadAllText(Path.Combine(folder, "site", "site.yaml")),
            "stations.csv",
            File.ReadAllText(Path.Combine(folder, "site", "stations.csv")));
        Assert.True(reading.Site is not null, string.Join('\n', reading.Problems.Where(p => p.Severity == Severity.Error)));

        var text = File.ReadAllText(Path.Combine(folder, "inbox", "logbook.csv"));
        var logbook = LogbookReader.Read("logbook.csv", text, reading.Site);
        Assert.True(logbook.Problems.Count == 0, string.Join('\n', logbook.Problems));
        Assert.Equal(text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length - 1, logbook.Entries.Count);
    }
}
