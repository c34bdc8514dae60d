using DailyAdjust.Core.Weather.Checks;
using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Architecture;
using DailyAdjust.Tests.Files;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>The page on checks, the list in the code, and what site.yaml may overrule are one.</summary>
public sealed class DocumentedChecksTests
{
    [Fact]
    public void The_page_lists_every_check_as_the_code_has_it()
    {
        var table = File.ReadLines(Path.Combine(Repository.Root, "docs", "weather-checks.md")).Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(1);
        Assert.Equal(WeatherChecks.All.Select(c => $"| {c.Name} | {c.What} | {c.Limit} | {c.Happens} | {c.Source} |"), table);
        Assert.Equal(16, WeatherChecks.All.Count);
        Assert.Equal(16, WeatherChecks.All.Select(c => c.Name).Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_check_can_be_overruled_by_name_and_for_each_quantity_that_it_judges()
    {
        foreach (var check in WeatherChecks.All)
        {
            Assert.Empty(Problems(check.Name));
            Assert.All(check.Quantities, q => Assert.Empty(Problems($"\"{check.Name} {Core.Weather.QuantityName.Of(q)}\"")));
        }

        Assert.Empty(Problems("[clear_sky, \"stuck wind_speed\"]"));
    }

    [Theory]
    [InlineData("clearsky", "is not a check of weather", "limits, humidity, order")]
    [InlineData("\"stuck rain\"", "stuck does not judge that", "air_temperature, relative_humidity, dew_point, wind_speed, solar_radiation")]
    [InlineData("\"stuck wind_speed rain\"", "stuck does not judge that", "write stuck")]
    public void A_name_that_is_no_check_is_an_error_that_lists_what_there_is(string accept, string what, string hint)
    {
        var problem = Assert.Single(Problems(accept));
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(hint, problem.Hint, StringComparison.Ordinal);
        Assert.True(problem.Line > 1);
    }

    private static IEnumerable<Problem> Problems(string accept)
    {
        var at = ExampleSiteFiles.SiteYaml.IndexOf("interval:", StringComparison.Ordinal);
        var yaml = ExampleSiteFiles.SiteYaml.Insert(at, $"accept: {accept}\n      ");
        return SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv).Problems.Where(p => p.Severity == Severity.Error);
    }
}
