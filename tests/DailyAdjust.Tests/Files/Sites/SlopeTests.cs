using DailyAdjust.Core.Quantities;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>A slope gives what the soil does not say of its surface.</summary>
public sealed class SlopeTests
{
    [Theory]
    [InlineData("available_water: 1.8 in/ft, texture: clay loam, slope: 9 %", 0.20, 0.18)]
    [InlineData("texture: loam, slope: 2 %", 0.35, 0.30)]
    [InlineData("texture: loam, slope: 2 %, intake_rate: 0.5 in/h", 0.50, 0.30)]
    [InlineData("texture: loam, slope: 20 %, surface_storage: 0.1 in", 0.35, 0.10)]
    public void What_is_given_stays_and_the_rest_comes_from_the_table(string soil, double intakeIn, double storageIn)
    {
        var (site, _) = Read(soil);
        var read = Assert.Single(site!.Soils.Values, s => s.Name is "hill");
        Assert.Equal(intakeIn * Depth.MmPerInch, read.IntakeRate!.Value.MmPerHour, 9);
        Assert.Equal(storageIn * Depth.MmPerInch, read.SurfaceStorage.Mm, 9);
    }

    [Theory]
    [InlineData("available_water: 1.8 in/ft, slope: 9 %", "has a slope but no texture")]
    [InlineData("texture: silt loam, slope: 9 %", "by slope is not in the table")]
    public void A_slope_alone_says_nothing(string soil, string what)
    {
        var (site, problems) = Read(soil);
        Assert.Null(site);
        Assert.Contains(problems, p => p.Contains(what, StringComparison.Ordinal));
    }

    private static (Core.Sites.Site? Site, IReadOnlyList<string> Problems) Read(string soil)
    {
        var yaml = ExampleSiteFiles.SiteYaml.Replace("\nsoils:\n", $"\nsoils:\n  hill: {{ {soil} }}\n", StringComparison.Ordinal);
        Assert.Contains("hill", yaml, StringComparison.Ordinal);
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", ExampleSiteFiles.StationsCsv);
        return (reading.Site, [.. reading.Problems.Select(p => p.ToString())]);
    }
}
