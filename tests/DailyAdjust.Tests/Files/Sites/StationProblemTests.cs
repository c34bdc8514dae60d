using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>Every kind of mistake in stations.csv. Each test changes one place of the example site; columns are counted in cells.</summary>
public sealed class StationProblemTests
{
    [Theory]
    [InlineData("C1,3,green 3", "C9,3,green 3", 4, 1, "there is no controller \"C9\" in site.yaml", "did you mean \"C1\"?")]
    [InlineData("C1,3,green 3,greens", "C1,3,green 3,green", 4, 4, "there is no area \"green\"", "did you mean \"greens\"?")]
    [InlineData("C1,3,green 3,greens,,25,,0.52,catalogue,43,8000,1.0,,", "C1,3,green 3,greens,,25,,0.52,catalogue,43,8000,1.0,barn,", 4, 13, "there is no gauge \"barn\"", "gauges: yard")]
    [InlineData("minutes P3", "minutes P7", 1, 7, "no controller has a program \"P7\"", "did you mean \"P1\"?")]
    [InlineData("C2,1,green 4,greens,,12,,", "C2,1,green 4,greens,,12,9,", 11, 7, "controller C2 has no program P3", "its programs: P1, P2")]
    [InlineData("C1,3,green 3", "C1,2,green 3", 4, 2, "station C1/2 stands there twice; the first is in line 3", "its own number")]
    [InlineData("C1,3,green 3", "C1,,green 3", 4, 2, "station is empty", "valve or head group")]
    [InlineData("C1,3,green 3", "C1,a/b,green 3", 4, 2, "\"a/b\" cannot be a station", "without blanks")]
    [InlineData(",,25,,0.52,", ",,25 min,,0.52,", 4, 6, "\"25 min\" is not a number", "the unit stands in the header")]
    [InlineData(",,25,,0.52,", ",,25,,\"0,52\",", 4, 8, "\"0,52\" is not a number", "write a decimal point: 0.52")]
    [InlineData(",,25,,0.52,catalogue,43,8000", ",,25,,,catalogue,43,", 4, 8, "the precipitation rate is not known", "flow and area watered")]
    [InlineData(",,25,,0.52,", ",,-25,,0.52,", 4, 6, "minutes P2 -25 is out of range", "from 0 to 1440 min")]
    [InlineData(",,25,,0.52,", ",,25,,52,", 4, 8, "precipitation rate 52 is out of range", "above 0 and at most 19.685 in/h")]
    [InlineData("0.52,catalogue", "0.52,guess", 4, 9, "\"guess\" is not known", "measured, catalogue or assumed")]
    [InlineData("precipitation rate (in/h)", "precipitation rate", 1, 8, "does not say its unit", "\"precipitation rate (mm/h)\"")]
    [InlineData("precipitation rate (in/h)", "precipitation rate (in)", 1, 8, "\"in\" is not a unit of water depth per hour", "mm/h, cm/h, in/h")]
    [InlineData("exposure", "exposuer", 1, 12, "\"exposuer\" is not a column that is known here", "did you mean \"exposure\"?")]
    [InlineData("exposure", "name", 1, 12, "the column \"name\" stands there twice", "keep one")]
    [InlineData(",area,", ",zone,", 1, 1, "the column \"area\" is missing", "docs/stations-csv.md")]
    [InlineData("43,8000,1.0,,", "43,8000,1.0,,,surplus", 4, 15, "the row has 15 cells, the header 14", "quotation marks")]
    [InlineData("43,8000,1.0,,", "43,8000,1.0,,6\" deep", 4, 14, "a quotation mark joins lines 4 to 16", "\"6\"\" deep\"")]
    public void A_mistake_is_named_where_it_stands(string good, string bad, int line, int cell, string what, string hint)
    {
        Assert.Contains(good, ExampleSiteFiles.StationsCsv, StringComparison.Ordinal);
        var at = ExampleSiteFiles.StationsCsv.IndexOf(good, StringComparison.Ordinal);
        var reading = Read(ExampleSiteFiles.StationsCsv.Remove(at, good.Length).Insert(at, bad));

        Assert.Null(reading.Site);
        Assert.True(
            reading.Problems.Any(p => p is { File: "stations.csv", Severity: Severity.Error } && p.Line == line && p.Column == cell
                && p.What.Contains(what, StringComparison.Ordinal) && p.Hint.Contains(hint, StringComparison.Ordinal)),
            string.Join('\n', reading.Problems));
    }

    [Fact]
    public void A_program_without_stations_is_named_where_site_yaml_describes_it()
    {
        var problem = Read(ExampleSiteFiles.StationsCsv.Replace(",,,45,", ",,,,", StringComparison.Ordinal)).Problems.Single(p => p.Severity == Severity.Error);
        Assert.Equal(("site.yaml", 84, 11), (problem.File, problem.Line, problem.Column));
        Assert.Contains("program C1/P3 has no station", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("C1,3,green 3,greens,,25,", "C1,3,green 3,greens,,,", 4, 2, "station C1/3 has no minutes in any program")]
    [InlineData("C1,3,green 3,greens,,25,", "C1,3,green 3,greens,20,25,", 4, 2, "station C1/3 has minutes in P1 and P2")]
    [InlineData("C1,3,green 3,greens,,25,", "C1,3,green 3,greens,,85,", 4, 6, "station C1/3 runs 85 min in P2")]
    [InlineData("0.52,catalogue,43,", "0.52,catalogue,430,", 4, 8, "the rate is given as 0.52 in/h, but flow and area watered make 5.17 in/h")]
    public void What_only_looks_wrong_is_a_warning(string good, string bad, int line, int cell, string what)
    {
        var reading = Read(ExampleSiteFiles.StationsCsv.Replace(good, bad, StringComparison.Ordinal));
        Assert.NotNull(reading.Site);
        Assert.Contains(reading.Problems, p => p.Severity == Severity.Warning && p.Line == line && p.Column == cell && p.What.Contains(what, StringComparison.Ordinal));
    }

    [Fact]
    public void All_bad_rows_are_told_at_once()
    {
        var lines = ExampleSiteFiles.StationsCsv.Split('\n');
        lines[2] = lines[2].Replace("27", "27x", StringComparison.Ordinal);
        lines[8] = lines[8].Replace("rough,", "ruff,", StringComparison.Ordinal);
        lines[12] = lines[12].Replace("C2", "C3", StringComparison.Ordinal);
        Assert.Equal([3, 9, 13], Read(string.Join('\n', lines)).Problems.Where(p => p.Severity == Severity.Error).Select(p => p.Line));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("controller,station,area\n")]
    public void A_file_without_stations_is_an_error(string csv) => Assert.Null(Read(csv).Site);

    private static SiteReading Read(string csv) => SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", csv);
}
