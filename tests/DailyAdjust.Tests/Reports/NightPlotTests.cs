using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>A night as a timeline of the invented course's boxes: window 20:30 to 06:15, round done by 13:00.</summary>
public class NightPlotTests
{
    private static readonly Site Course = InventedCourse.Build(UnitSystem.Us);

    [Fact]
    public void Boxes_stand_in_walking_order_and_hours_on_one_scale()
    {
        // 21:00 to 05:00 is 310 wide: 38.75 an hour.
        var plot = Plot(Run("B", "P1", (0, 21, 30), (0, 22, 30)), Run("A", "P2", (0, 21, 0), (0, 23, 0)), Run("A", "P1", (1, 4, 0), (1, 5, 0)));
        Assert.Equal(["A", "B"], plot.Rows.Select(r => r.Controller));
        Assert.Equal((NightPlot.Left, 77.5, "P2"), (plot.Rows[0].Runs[0].X, plot.Rows[0].Runs[0].Width, plot.Rows[0].Runs[0].Label));
        Assert.Equal(NightPlot.Right, plot.Rows[0].Runs[1].X + plot.Rows[0].Runs[1].Width, 9);
        Assert.Equal(["21:00", "23:00", "01:00", "03:00", "05:00"], plot.Labels.Select(l => l.Clock));
        Assert.Empty(plot.Edges); // neither end of the window lies in it
        Assert.All(plot.Rows, r => Assert.Empty(r.Overlaps));
    }

    [Fact]
    public void Programs_that_run_at_once_are_marked_and_named()
    {
        var runs = new[] { Run("A", "P1", (0, 21, 0), (0, 23, 0)), Run("A", "P2", (0, 22, 0), (1, 1, 0)), Run("B", "P1", (0, 21, 0), (0, 21, 10)) };
        var overlap = Assert.Single(Plot(runs).Rows[0].Overlaps);
        Assert.Equal((NightPlot.Left + 77.5, 77.5), (overlap.X, overlap.Width)); // of four hours the second
        Assert.Equal(["A !", "B"], Plot(runs).Rows.Select(row => NightChartWords.Row(row.Controller, row.Overlaps.Count > 0)));
        var said = NightChartWords.Description(new NightOfRuns(InventedMorning.Date, runs), Plot(runs).Rows.Count, Plot(runs).Crossing, View().Words);
        Assert.Equal("3 runs of 2 boxes, from 21:00 today to 01:00 tomorrow. Programs run at once on A.", said.ToString());
    }

    [Fact]
    public void The_pump_and_the_window_stand_in_it()
    {
        var fit = new NightFit([], [], [], [new PumpExceeded(InventedMorning.At(0, 22, 0), InventedMorning.At(0, 23, 0), 2, 1), new PumpExceeded(InventedMorning.At(3, 22, 0), InventedMorning.At(3, 23, 0), 2, 1)], []);
        var plot = new NightPlot([Run("A", "P1", (0, 20, 0), (1, 0, 0))], fit, Course);
        Assert.Equal((NightPlot.Left + 155, 77.5), (Assert.Single(plot.Pump).X, plot.Pump[0].Width)); // of four hours the third
        Assert.Equal(NightPlot.Left + 38.75, Assert.Single(plot.Edges)); // 20:30
    }

    [Fact]
    public void A_hatch_stays_in_its_bar()
    {
        var numbers = System.Text.RegularExpressions.Regex.Matches(NightPlot.Hatch(new NightBar(100, 12), 50), @"M([0-9.]+) ([0-9.]+)L([0-9.]+) ([0-9.]+)");
        Assert.Equal(5, numbers.Count);
        Assert.All(numbers, m =>
        {
            double V(int group) => double.Parse(m.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
            Assert.InRange(V(1), 100, 112);
            Assert.InRange(V(3), 100, 112);
            Assert.InRange(V(2), 50, 50 + NightPlot.BarHeight);
            Assert.InRange(V(4), 50, 50 + NightPlot.BarHeight);
            Assert.Equal(V(3) - V(1), V(2) - V(4), 6); // at 45 degrees
        });
    }

    [Fact]
    public void A_night_goes_from_one_round_to_the_next()
    {
        var fit = new NightFit([Run("A", "P1", (0, 21, 0), (0, 22, 0)), Run("A", "P1", (1, 4, 0), (1, 5, 0)), Run("A", "P1", (1, 13, 0), (1, 14, 0))], [], [], [], []);
        Assert.Equal([(InventedMorning.Date, 2), (InventedMorning.Date.AddDays(1), 1)], NightOfRuns.Of(fit, Course).Select(n => (n.Date, n.Runs.Count)));
    }

    private static SheetView View() => new(InventedMorning.Build(), InventedMorning.Issue);

    private static NightPlot Plot(params ProgramRun[] runs) => new(runs, new NightFit([], [], [], [], []), Course);

    private static ProgramRun Run(string controller, string program, (int Day, int Hour, int Minute) from, (int Day, int Hour, int Minute) to) =>
        new(InventedMorning.Date, new ProgramKey(controller, program), InventedMorning.At(from.Day, from.Hour, from.Minute), InventedMorning.At(to.Day, to.Hour, to.Minute));
}
