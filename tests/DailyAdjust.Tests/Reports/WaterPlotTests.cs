using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>The month's water beside what the place may take.</summary>
public class WaterPlotTests
{
    private static readonly SiteWords Words = new(UnitSystem.Metric, InventedCourse.Clock, InventedMorning.Date);

    [Fact]
    public void The_allotment_rises_evenly_to_its_share_of_the_month()
    {
        var plot = Plot(allotment: 2000, permit: null);
        Assert.Equal(2000, plot.LargestL);
        Assert.Equal((WaterPlot.Right, WaterPlot.Top), plot.AllotmentEnd);
    }

    [Fact]
    public void One_far_above_what_was_used_leaves_the_drawing_at_its_upper_edge_and_does_not_press_it_flat()
    {
        var plot = Plot(allotment: 10_000, permit: null);
        Assert.Equal(1000, plot.LargestL);
        Assert.Equal((WaterPlot.Left + ((WaterPlot.Right - WaterPlot.Left) / 10), WaterPlot.Top), plot.AllotmentEnd);
    }

    [Fact]
    public void A_permit_far_above_is_said_and_not_drawn()
    {
        Assert.False(Plot(null, 10_000).IsDrawn(10_000));
        Assert.Equal("permit, a month: 10 m³, above this chart", WaterChartWords.KeyLimit(10_000, isDrawn: false, Words).ToString());
        Assert.True(Plot(null, 2_900).IsDrawn(2_900));
        Assert.Equal("permit, a month", WaterChartWords.KeyLimit(2_900, isDrawn: true, Words).ToString());
    }

    [Fact]
    public void The_allotment_is_said_in_words_too()
    {
        var used = Used(allotment: 3100);
        Assert.EndsWith("The allotment, used evenly over its year, gives 3.1 m³ this month.", WaterChartWords.Description(used, InventedMorning.Date, Words).ToString(), StringComparison.Ordinal);
    }

    private static WaterPlot Plot(double? allotment, double? permit) =>
        new(Used(allotment) with { Limits = permit is { } most ? [new(LimitKind.Month, most, new(2026, 7, 1), 1000, IsMetered: false, Over: 0)] : [] });

    private static WaterUsed Used(double? allotment) => new(0, 1000, 1000, 0)
    {
        Month = [new DayWater(new(2026, 7, 1), 400, 0, 4), new DayWater(new(2026, 7, 2), 600, 0, 4)],
        AllotmentMonthL = allotment,
    };
}
