using System.Globalization;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>The season's strips: weeks from Monday, means of their days, one path a shade.</summary>
public class SeasonPlotTests
{
    private static readonly ProgramKey Program = new("A", "P1");

    /// <summary>A Wednesday.</summary>
    private static readonly DateOnly First = new(2026, 4, 29);

    [Fact]
    public void A_week_is_the_mean_of_its_days()
    {
        var season = new ProgramSeason(Program, First, [100, 100, 100, 50, 50, 0, 0, 0, 0, 0, 0, 70]);
        Assert.Equal(
            [(new DateOnly(2026, 4, 27), 80.0), (new DateOnly(2026, 5, 4), 10.0)],
            SeasonPlot.Weeks(season).Select(w => (w.Monday, w.Percent)));
        Assert.Equal("75 %", SeasonChartWords.Mean(season with { Percents = [100, 50] }, new(2026, 4, 1)));
        Assert.Equal("13 %", SeasonChartWords.Mean(season with { Percents = [0, 0, 25, 0] }, new(2026, 5, 1)));
    }

    [Theory]
    [InlineData(0, -1)]
    [InlineData(1, 0)]
    [InlineData(40, 0)]
    [InlineData(41, 1)]
    [InlineData(100, 2)]
    [InlineData(130, 3)]
    [InlineData(131, 4)]
    public void Each_number_has_one_shade_and_off_is_none(double percent, int shade)
    {
        var plot = new SeasonPlot([new ProgramSeason(Program, First, [percent])]);
        for (var s = -1; s < SeasonChartWords.Ends.Count; s++)
        {
            Assert.Equal(s == shade, plot.Path(s).Length > 0);
        }
    }

    [Fact]
    public void Weeks_stand_side_by_side_in_their_rows()
    {
        // Ten weeks of 30.2 each: five of one shade, then five of the next. The second program stands a row below.
        double[] weeks = [.. Enumerable.Repeat(80.0, 35), .. Enumerable.Repeat(120.0, 35)];
        var monday = new DateOnly(2026, 4, 27);
        var plot = new SeasonPlot([new ProgramSeason(Program, monday, weeks), new ProgramSeason(new("A", "P2"), monday, weeks)]);
        var (left, middle, right, half) = (SeasonPlot.Left, SeasonPlot.Left + 151, SeasonPlot.Right, SeasonPlot.CellHeight / 2);
        Assert.Equal([(left, SeasonPlot.Y(0) + half, middle), (left, SeasonPlot.Y(1) + half, middle)], Strokes(plot.Path(2)));
        Assert.Equal([(middle, SeasonPlot.Y(0) + half, right), (middle, SeasonPlot.Y(1) + half, right)], Strokes(plot.Path(3)));
    }

    [Fact]
    public void Months_stand_over_the_week_in_which_they_begin() =>
        Assert.Equal(["May", "Jun"], new SeasonPlot([new ProgramSeason(Program, First, new double[60])]).Months().Select(m => SeasonChartWords.Month(m.Month).ToString()));

    private static IEnumerable<(double From, double Y, double To)> Strokes(string path) =>
        Regex.Matches(path, @"M([0-9.]+) ([0-9.]+)H([0-9.]+)").Select(m => (Number(m, 1), Number(m, 2), Number(m, 3)));

    private static double Number(Match match, int group) => double.Parse(match.Groups[group].Value, CultureInfo.InvariantCulture);
}
