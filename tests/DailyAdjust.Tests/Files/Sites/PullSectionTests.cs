using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>pull: what a source's files are called when several days are fetched.</summary>
public sealed class PullSectionTests
{
    [Theory]
    [InlineData("url: \"https://example.org/a.csv\", every: 1 d", "yard-pulled.csv")]
    [InlineData("url: \"https://example.org/{yyyyMMdd}.csv\", every: 1 min, days_back: 2", "yard-pulled-{yyyyMMdd}.csv")]
    [InlineData("url: \"https://example.org/{yyyyMMdd}.csv\", every: 30 min, days_back: 2, file: \"yard-{yyyy-MM-dd}.csv\"", "yard-{yyyy-MM-dd}.csv")]
    public void Files_of_several_days_carry_their_date(string pull, string file)
    {
        var (source, problems) = Read(pull);
        Assert.True(source is not null, string.Join(Environment.NewLine, problems));
        Assert.Equal(file, source.Pull!.File);
    }

    [Fact]
    public void A_name_without_a_date_for_several_days_is_an_error()
    {
        var (source, problems) = Read("url: \"https://example.org/{yyyyMMdd}.csv\", every: 30 min, days_back: 2, file: \"yard-x.csv\"");
        Assert.Null(source);
        Assert.Contains(problems, p => p.Contains("would be the name of several days' files", StringComparison.Ordinal));
    }

    private static (WeatherSource? Source, IReadOnlyList<string> Problems) Read(string pull)
    {
        var yaml = ExampleSiteFiles.SiteYaml.Replace("    - id: yard\n", $"    - id: yard\n      pull: {{ {pull} }}\n", StringComparison.Ordinal);
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
        return (reading.Site?.Weather.Stations[0], [.. reading.Problems.Select(p => p.ToString())]);
    }
}
