using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Audits;
using DailyAdjust.Files.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Audits;

/// <summary>Files of catch cups for the example site, good and bad.</summary>
public sealed class CatchCupsReaderTests
{
    private const string Header = "where,cup,volume (mL),throat area (in²),run time (min),wind speed (mph),note\n";

    private static readonly Site Site = SiteReader.Read("site.yaml", ExampleSiteFiles.SiteYaml, "stations.csv", ExampleSiteFiles.StationsCsv).Site!;

    /// <summary>
    /// in/h = 3.66 × mean mL / (minutes × in² of throat): landscape irrigation audit handbook, from memory; exact: 60 / 16.387 mL in a cubic inch.
    /// </summary>
    [Fact]
    public void Volumes_become_the_handbooks_rate()
    {
        int[] volumes = [20, 22, 25, 18, 30, 28, 26, 24, 15, 19, 27, 29, 23, 21, 31, 17];
        var rows = string.Concat(volumes.Select((v, i) => i == 0 ? $"C1/3,{i},{v},16.5,15,3,\n" : $"c1/3,{i},{v},,,,\n"));
        var run = Assert.Single(Good(Header + rows));
        Assert.Equal("C1/3", Assert.Single(run.Stations).Key.ToString());
        Assert.Equal(15, run.Minutes);
        Assert.Equal(3 * 0.44704, run.WindMPerS!.Value, 1e-9);
        var audit = CatchAudit.Of(run);
        Assert.Equal(3.66 * 23.4375 / (15 * 16.5), audit.RateMmPerHour / Depth.MmPerInch, 0.0005);
        Assert.Equal(60 / 16.387064 * 23.4375 / (15 * 16.5), audit.RateMmPerHour / Depth.MmPerInch, 1e-9);
        Assert.Equal(0.736, audit.LowerQuarter, 1e-9);
    }

    [Fact]
    public void Diameter_area_and_depth_say_the_same()
    {
        // A throat of 100 mm has 7854 mm²: 78.54 mL stand 10 mm deep in it.
        string[] files =
        [
            "where,volume (mL),throat diameter (mm),run time (min)\nC1/1,78.53982,100,30\nC1/1,78.53982,100,30\nC1/1,78.53982,,\nC1/1,78.53982,,\n",
            "where;volume (L);throat area (cm²);run time (h)\r\nC1/1;0.07853982;78.53982;0.5\r\nC1/1;0.07853982;;\r\nC1/1;0.07853982;;\r\nC1/1;0.07853982;;\r\n",
            "\uFEFFwhere\tdepth (mm)\trun time (min)\nC1/1\t10\t30\nC1/1\t10\t30\nC1/1\t10\t30\nC1/1\t10\t30\n",
            "Run Time (min),Depth [in],Where\n30,0.3937008,C1/1\n,0.3937008,C1/1\n,0.3937008,C1/1\n,0.3937008,C1/1\n",
        ];
        Assert.All(files, file =>
        {
            var run = Assert.Single(Good(file));
            Assert.Equal(30, run.Minutes, 1e-9);
            Assert.Null(run.WindMPerS);
            Assert.All(run.DepthsMm, d => Assert.Equal(10, d, 1e-6));
        });
    }

    [Fact]
    public void Runs_come_in_the_order_of_the_file_and_stations_together_in_any_order()
    {
        var text = "where,depth (mm),run time (min)\n" + string.Concat(Enumerable.Repeat("C2/5 C2/4,5,20\nC2/4 C2/5,6,20\n\nC1/1,4,10\n", 4));
        var runs = Good(text);
        Assert.Equal(["C2/4 C2/5", "C1/1"], runs.Select(r => string.Join(' ', r.Stations.Select(s => s.Key))));
        Assert.Equal([8, 4], runs.Select(r => r.DepthsMm.Count));
        Assert.Equal(5.5, runs[0].DepthsMm.Average(), 1e-12);
    }

    [Fact]
    public void A_dry_cup_is_a_reading()
    {
        var run = Assert.Single(Good("where,depth (mm),run time (min)\nC1/1,0,30\nC1/1,4,30\nC1/1,4,30\nC1/1,4,30\n"));
        Assert.Equal([0, 4, 4, 4], run.DepthsMm);
    }

    [Theory]
    [InlineData("C1/1,1,ten,16,15,,", 2, 3, "\"ten\" is not a number")]
    [InlineData("C1/1,1,\"1,5\",16,15,,", 2, 3, "write a decimal point: 1.5")]
    [InlineData("C1/1,1,,16,15,,", 2, 3, "volume is empty")]
    [InlineData("C1/1,1,-4,16,15,,", 2, 3, "out of range")]
    [InlineData("C1/1,1,NaN,16,15,,", 2, 3, "not a number")]
    [InlineData("C1/1,1,20,0,15,,", 2, 4, "out of range")]
    [InlineData("C1/1,1,20,16,0,,", 2, 5, "out of range")]
    [InlineData("C1/1,1,20,16,15,calm,", 2, 6, "not a number")]
    [InlineData("C1/99,1,20,16,15,,", 2, 1, "there is no station \"C1/99\"")]
    [InlineData("C1,1,20,16,15,,", 2, 1, "there is no station \"C1\"")]
    [InlineData("area:greens,1,20,16,15,,", 2, 1, "there is no station")]
    [InlineData("C1/1 c1/1,1,20,16,15,,", 2, 1, "stands there twice")]
    [InlineData(",1,20,16,15,,", 2, 1, "where is empty")]
    [InlineData("C1/1,1,20,16,15,,,7", 2, 8, "the row has 8 cells")]
    [InlineData("C1/1,1,20,,15,,", 2, 4, "throat area of this run is not known")]
    [InlineData("C1/1,1,20,16,,,", 2, 5, "run time of this run is not known")]
    [InlineData("C1/1,1,20,0.001,15,,", 2, 3, "volume and throat make a depth")]
    [InlineData("C1/1,1,20,16,15,,\nC1/1,5,20,17,,,", 3, 4, "another than in line 2")]
    [InlineData("C1/1,1,20,16,15,,\nC1/1,5,20,,16,,", 3, 5, "another than in line 2")]
    [InlineData("C1/1,1,20,16,15,2,\nC1/1,5,20,,,3,", 3, 6, "another than in line 2")]
    [InlineData("C1/1,1,20,16,15,,\nC1/1,1,20,,,,", 3, 2, "stands in line 2 already")]
    [InlineData("C1/1,1,20,16,15,,\nC1/1 C1/2,1,9,16,15,,\nC1/1 C1/2,2,9,,,,\nC1/1 C1/2,3,9,,,,\nC1/1 C1/2,4,9,,,,", 3, 1, "C1/1 stands in another run")]
    [InlineData("C1/1,1,20,16,15,\"6\" deep\",", 2, 6, "quotation mark")]
    public void A_bad_cell_refuses_the_file_and_says_where(string first, int line, int column, string what)
    {
        var reading = CatchCupsReader.Read("cups.csv", Header + first + "\nC1/1,2,21,,,,\nC1/1,3,22,,,,\nC1/1,4,23,,,,\n", Site);
        Assert.Empty(reading.Runs);
        Assert.Contains(reading.Problems, p => p.Line == line && p.Column == column && p.ToString().Contains(what, StringComparison.Ordinal));
        Assert.All(reading.Problems, p => Assert.NotEmpty(p.Hint));
    }

    [Theory]
    [InlineData("cup,depth (mm),run time (min)", "the column \"where\" is missing")]
    [InlineData("where,depth (mm)", "the column \"run time\" is missing")]
    [InlineData("where,run time (min)", "neither volume nor depth")]
    [InlineData("where,volume (mL),depth (mm),throat area (in2),run time (min)", "both volume and depth")]
    [InlineData("where,volume (mL),run time (min)", "neither throat area nor throat diameter")]
    [InlineData("where,volume (mL),throat area (in2),throat diameter (in),run time (min)", "both throat area and throat diameter")]
    [InlineData("where,depth (mm),throat diameter (in),run time (min)", "a depth needs no throat diameter")]
    [InlineData("where,depth,run time (min)", "does not say its unit")]
    [InlineData("where,depth (gal),run time (min)", "\"gal\" is not a unit of water depth")]
    [InlineData("where,depth (mm),depth (in),run time (min)", "stands there twice")]
    [InlineData("where,depht (mm),run time (min)", "did you mean \"depth\"?")]
    public void A_bad_header_refuses_the_file(string header, string what)
    {
        var reading = CatchCupsReader.Read("cups.csv", header + "\nC1/1,10,30,1,1\n", Site);
        Assert.Empty(reading.Runs);
        Assert.Contains(reading.Problems, p => p.Line == 1 && p.ToString().Contains(what, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData(",,,\n", "the file is empty")]
    [InlineData("where,depth (mm),run time (min)\n", "there is no cup")]
    [InlineData("where,depth (mm),run time (min)\nC1/1,5,20\nC1/1,5,20\nC1/1,5,20\n", "3 cups have no quarter")]
    [InlineData("where,depth (mm),run time (min)\nC1/1,0,20\nC1/1,0,20\nC1/1,0,20\nC1/1,0,20\n", "every cup of this run is empty")]
    [InlineData("where,depth (mm),run time (min)\nC1/1,50,1\nC1/1,50,1\nC1/1,50,1\nC1/1,50,1\n", "makes a precipitation rate of 3000 mm/h")]
    public void What_is_no_audit_is_refused(string text, string what)
    {
        var reading = CatchCupsReader.Read("cups.csv", text, Site);
        Assert.Empty(reading.Runs);
        Assert.Contains(what, Assert.Single(reading.Problems).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void All_that_is_wrong_is_told_at_once()
    {
        var reading = CatchCupsReader.Read("cups.csv", Header + "C1/1,1,x,16,15,,\nC9/1,2,21,,y,,\nC1/1,3,,,,,\n", Site);
        Assert.Equal([(2, 3), (3, 1), (3, 5), (4, 3)], reading.Problems.Select(p => (p.Line, p.Column)));
    }

    /// <summary>Of the header, of rows and of runs: each is told without waiting for the others, in the order of the file.</summary>
    [Fact]
    public void Header_rows_and_runs_are_told_together()
    {
        const string Text = """
            where,cup,volume (hogsheads),throat area (in²),run time (min),wnd (mph)
            C1/1,1,20,16,15,
            C1/1,2,x,17,,
            C1/1,2,20,,16,
            C1/1,4,20,,,
            C1/99,1,20,16,15,
            C1/2,1,20,16,0,

            """;
        var reading = CatchCupsReader.Read("cups.csv", Text, Site);
        Assert.Empty(reading.Runs);
        Assert.Equal([(1, 3), (1, 6), (3, 3), (3, 4), (4, 2), (4, 5), (6, 1), (7, 5)], reading.Problems.Select(p => (p.Line, p.Column)));
        Assert.All(reading.Problems, p => Assert.NotEmpty(p.Hint));
    }

    /// <summary>What a row that could not be read may say is not told to be missing, and its number is not held against others.</summary>
    [Theory]
    [InlineData("C1/1,1,20,16,15,,\nC1/11,2,21,,,,\nC1/1,3,22,,,,\nC1/1,4,23,,,,", 3)] // of four cups one is at a station that is not known
    [InlineData("C1/1,1,20,16,,,\nC1/11,2,21,,15,,\nC1/1,3,22,,,,\nC1/1,4,23,,,,", 3)] // and it has the run time
    [InlineData("C1/1,1,20,16,quarter of an hour,,\nC1/1,2,21,,,,\nC1/1,3,22,,,,\nC1/1,4,23,,,,", 2)]
    [InlineData("C1/1,1,20,16,15,,\nC1/1,2,\"6\" deep\",,,,\nC1/1,3,22,,,,\nC1/1,4,23,,,,", 3)]
    [InlineData("C1/1,1,20,16,15,,\nC1/1,2,1,5,,,,,x\nC1/1,3,22,,,,\nC1/1,4,23,,,,", 3)] // a comma moved the throat to 5
    public void A_row_that_cannot_be_read_gives_no_other_problem_a_cause(string rows, int line)
    {
        var problem = Assert.Single(CatchCupsReader.Read("cups.csv", Header + rows + "\n", Site).Problems);
        Assert.Equal(line, problem.Line);
    }

    private static IReadOnlyList<CatchCups> Good(string text)
    {
        var reading = CatchCupsReader.Read("cups.csv", text, Site);
        Assert.True(reading.Problems.Count == 0, string.Join('\n', reading.Problems));
        return reading.Runs;
    }
}
