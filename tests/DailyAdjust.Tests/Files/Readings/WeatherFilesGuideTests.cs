using System.Text.RegularExpressions;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

/// <summary>The examples of docs/weather-files.md are read by the program itself: the column map as site.yaml, the table as the station's file.</summary>
public sealed class WeatherFilesGuideTests
{
    private static readonly string[] Names = ["yard-2026.csv", "log_20260601.txt", "DAILY.csv"];

    [Fact]
    public void TheHourlyExportIsReadAsTheGuideSays()
    {
        var (source, readings) = Example(0);

        Assert.Equal(2, source.WindHeightM);
        Assert.Equal(new DateTimeOffset(2026, 6, 1, 17, 0, 0, TimeSpan.Zero), readings[0].Begin);
        Assert.Equal([25, double.NaN], readings.Select(r => Math.Round(r.AirTemperatureC, 9)));
        Assert.Equal(3.06, readings[0].SolarRadiationMJPerM2, 1e-12);
        Assert.Equal(0.254, readings[1].RainMm, 1e-12);
    }

    [Fact]
    public void TheLoggerOnStandardTimeIsReadAsTheGuideSays()
    {
        var (source, readings) = Example(1);

        Assert.Equal(10, source.WindHeightM);
        Assert.Equal(new DateTimeOffset(2026, 6, 1, 17, 0, 0, TimeSpan.Zero), readings[0].Begin);
        Assert.Equal(new DateTimeOffset(2026, 6, 1, 17, 10, 0, TimeSpan.Zero), readings[0].End);
        Assert.Equal([25, double.NaN], readings.Select(r => r.AirTemperatureC));
        Assert.Equal([2.5, 3], readings.Select(r => Math.Round(r.WindSpeedMPerS, 9)));
        Assert.Equal(0.51, readings[0].SolarRadiationMJPerM2, 1e-12);
    }

    [Fact]
    public void TheDailyTableIsReadAsTheGuideSays()
    {
        var (_, readings) = Example(2);

        Assert.Equal(StationFile.Chicago.DayStart(new DateOnly(2026, 6, 2)), readings[1].Begin);
        Assert.Equal((25, 15), (Math.Round(readings[0].AirTemperatureMaxC, 9), Math.Round(readings[0].AirTemperatureMinC, 9)));
        Assert.Equal(double.NaN, readings[1].AirTemperatureMinC);
        Assert.Equal(24.5, readings[0].SolarRadiationMJPerM2, 1e-9);
        Assert.Equal(7.874, readings[1].RainMm, 1e-9);
    }

    private static (WeatherSource Source, IReadOnlyList<Reading> Readings) Example(int number)
    {
        var guide = File.ReadAllText(Path.Combine(Repository.Root, "docs", "weather-files.md"));
        var map = Blocks(guide, "yaml")[number];
        var site = ExampleSiteFiles.SiteYaml;
        var (stations, gauges, soils) = (site.IndexOf("  stations:\n", StringComparison.Ordinal), "  gauges:\n", site.IndexOf("\nsoils:", StringComparison.Ordinal));
        var id = Regex.Match(map, "id: (?<id>\\w+)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Groups["id"].Value;
        var yaml = site[..stations] + "  stations:\n    " + map.TrimEnd().Replace("\n", "\n    ", StringComparison.Ordinal) + "\n" + gauges + $"    - {{ id: yard, station: {id} }}" + site[soils..];
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
        Assert.DoesNotContain(reading.Problems, problem => problem.Severity == Severity.Error);

        var source = Assert.Single(reading.Site!.Weather.Stations);
        Assert.Same(source, ReadingsFile.SourceOf(Names[number], reading.Site.Weather.Stations));
        var result = StationFile.Read(Blocks(guide, "csv")[number], source, reading.Site.Clock);
        Assert.Empty(result.Report.Problems);
        Assert.Equal((2, 0, 0), result.Counts);
        return (source, result.Readings);
    }

    private static List<string> Blocks(string guide, string language) =>
        [.. Regex.Matches(guide, $"```{language}\n(?<block>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Select(match => match.Groups["block"].Value)];
}
