using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Sites;

/// <summary>Measured rates written into stations.csv, and every other character left alone.</summary>
public sealed class StationsEditTests
{
    private static readonly string Stations = ExampleSiteFiles.StationsCsv.ReplaceLineEndings("\n");

    private static readonly MeasuredStation[] Third = [new(new("C1", "3"), 14.0, 0.736)];

    [Fact]
    public void Rate_source_and_uniformity_are_written_and_nothing_else()
    {
        var text = Stations;
        var edit = Edit(text, Third);
        var expected = text
            .Replace("gauge,note\n", "gauge,note,distribution uniformity (%)\n", StringComparison.Ordinal)
            .Replace("C1,3,green 3,greens,,25,,0.52,catalogue,43,8000,1.0,,\n", "C1,3,green 3,greens,,25,,0.5512,measured,43,8000,1.0,,,73.6\n", StringComparison.Ordinal);
        Assert.NotEqual(text, expected);
        Assert.Equal(expected, edit.Text);
        Assert.Equal(
            ["4 precipitation rate (in/h) 0.52 0.5512", "4 rate known catalogue measured", "4 distribution uniformity (%)  73.6"],
            edit.Changes.Select(c => $"{c.Line} {c.Column} {c.Old} {c.New}"));
        Assert.All(edit.Changes, c => Assert.Equal("C1/3", c.Station.ToString()));
    }

    [Fact]
    public void The_edited_file_reads_back_as_measured()
    {
        var before = Site(Stations);
        var after = Site(Edit(Stations, Third).Text);
        var station = after.Stations[2];
        Assert.Equal(RateKnown.Measured, station.RateKnown);
        Assert.Equal(14.0, station.Rate.MmPerHour, 0.005);
        Assert.Equal(0.736, station.DistributionUniformity!.Value, 1e-12);
        Assert.Equal(0.4 + (0.6 * 0.736), station.Efficiency, 1e-12);
        foreach (var (old, now) in before.Stations.Zip(after.Stations).Where(s => s.First.Key != station.Key))
        {
            Assert.Equal((old.Rate, old.RateKnown, old.Efficiency, old.Note, old.Name), (now.Rate, now.RateKnown, now.Efficiency, now.Note, now.Name));
            Assert.Equal(old.Area.Efficiency, now.Efficiency);
        }
    }

    [Fact]
    public void The_same_again_changes_nothing()
    {
        var once = Edit(Stations, Third).Text;
        var twice = Edit(once, Third);
        Assert.Equal(once, twice.Text);
        Assert.Empty(twice.Changes);
    }

    [Fact]
    public void A_number_that_is_only_spelled_otherwise_stays()
    {
        var text = Edit(Stations, [new(new("C1", "3"), 0.52 * 25.4, 0.75)]).Text;
        Assert.Contains("C1,3,green 3,greens,,25,,0.52,measured,43,8000,1.0,,,75\n", text, StringComparison.Ordinal);
        var padded = text.Replace(",0.52,measured,", ",0.520,Measured,", StringComparison.Ordinal).Replace(",75\n", ",75.0\n", StringComparison.Ordinal);
        Assert.Equal(padded, Edit(padded, [new(new("C1", "3"), 0.52 * 25.4, 0.75)]).Text);
    }

    /// <summary>Byte order mark, semicolons, CRLF, quotation marks, blanks, columns in another order, a line break in a cell, empty lines, no last line end, metric headers.</summary>
    [Fact]
    public void Every_other_character_stays()
    {
        var text = "\uFEFF\"note\";\"rate known\" ; precipitation rate (mm/h);controller;station;area;minutes P1;distribution uniformity [%]\r\n"
            + "\"said \"\"good\"\"; see\r\nthe book\";\"assumed\"; 12.0 ;C1;4;fairways;70;\r\n"
            + "\r\n"
            + "\"tab\there\"; assumed ;\"11\";C1;5;fairways;70;\"\"\n"
            + "plain;;13;C1;6;fairways;45";
        var site = Site(Stations);
        var edit = StationsEdit.Of(text, site, [new(new("C1", "4"), 10.04, 0.7), new(new("C1", "5"), 9.5, 0.655), new(new("C1", "6"), 8.123456, 0.8)]);
        Assert.Equal(
            "\uFEFF\"note\";\"rate known\" ; precipitation rate (mm/h);controller;station;area;minutes P1;distribution uniformity [%]\r\n"
            + "\"said \"\"good\"\"; see\r\nthe book\";\"measured\"; 10.04 ;C1;4;fairways;70;70\r\n"
            + "\r\n"
            + "\"tab\there\"; measured ;\"9.5\";C1;5;fairways;70;\"65.5\"\n"
            + "plain;measured;8.123;C1;6;fairways;45;80",
            edit.Text);
        Assert.Equal([2, 2, 2, 5, 5, 5, 6, 6, 6], edit.Changes.Select(c => c.Line));
    }

    [Fact]
    public void Missing_columns_come_at_the_end_in_the_sites_units_and_short_rows_grow()
    {
        const string Text = "\"controller\",\"station\",\"area\",\"minutes P1\",\"flow (gpm)\",\"area watered (ft2)\",\"\"\nC1,4,fairways,70,104,20800,\nC1,5,fairways,70\nC1,6,fairways,45,98,21000\n";
        var edit = StationsEdit.Of(Text, Site(Stations), [new(new("C1", "5"), 12.7, 0.81)]);
        Assert.Equal(
            "\"controller\",\"station\",\"area\",\"minutes P1\",\"flow (gpm)\",\"area watered (ft2)\",\"\",\"precipitation rate (in/h)\",\"rate known\",\"distribution uniformity (%)\"\n"
            + "C1,4,fairways,70,104,20800,\nC1,5,fairways,70,,,,0.5,measured,81\nC1,6,fairways,45,98,21000\n",
            edit.Text);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Line_ends_stay(string end) =>
        Assert.Equal(Edit(Stations, Third).Text.ReplaceLineEndings(end), Edit(Stations.ReplaceLineEndings(end), Third).Text);

    [Fact]
    public void Nothing_measured_gives_the_same_text() => Assert.Equal(Stations, Edit(Stations, []).Text);

    [Theory]
    [InlineData("distribution uniformity", "75", "does not say its unit")]
    [InlineData("distribution uniformity (%)", "0", "out of range")]
    [InlineData("distribution uniformity (%)", "101", "out of range")]
    [InlineData("distribution uniformity (%)", "good", "not a number")]
    public void A_uniformity_is_read_as_strictly_as_a_rate(string header, string cell, string what)
    {
        var lines = Stations.Split('\n');
        var text = string.Join('\n', lines.Select((l, i) => l.Length == 0 ? l : i == 0 ? $"{l},{header}" : i == 3 ? $"{l},{cell}" : l));
        var reading = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", text);
        Assert.Null(reading.Site);
        var problem = Assert.Single(reading.Problems, p => p.Severity == DailyAdjust.Files.Severity.Error);
        Assert.Contains(what, problem.ToString(), StringComparison.Ordinal);
        Assert.Equal(15, problem.Column);
    }

    private static StationsEdit Edit(string text, IReadOnlyList<MeasuredStation> measured) => StationsEdit.Of(text, Site(text), measured);

    private static Site Site(string stations)
    {
        var reading = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", stations);
        return reading.Site ?? throw new InvalidOperationException(string.Join('\n', reading.Problems));
    }
}
