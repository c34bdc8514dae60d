using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Reports.Html;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>ETo and rain of the last days on one scale.</summary>
public class WeatherPlotTests
{
    private static readonly SiteWords Words = new(UnitSystem.Metric, InventedCourse.Clock, InventedMorning.Date);

    [Fact]
    public void Both_are_drawn_on_one_scale()
    {
        var plot = new WeatherPlot([Day(0, 4, 20), Day(1, 5, 0)]);
        Assert.Equal(20, plot.LargestMm);
        Assert.Equal(WeatherPlot.Top, plot.Y(20));
        Assert.Equal(WeatherPlot.Base - ((WeatherPlot.Base - WeatherPlot.Top) / 4), plot.Y(5));
        Assert.Equal(5, new WeatherPlot([Day(0, 0.2, 0)]).LargestMm); // a still fortnight keeps a scale
    }

    [Fact]
    public void A_day_of_which_nothing_is_known_breaks_the_line()
    {
        var plot = new WeatherPlot([Day(0, 4, 0), Day(1, 5, 0), Day(2, null, 0), Day(3, 4, 0)]);
        Assert.Equal([2, 1], plot.Lines().Select(l => l.Split(' ').Length));
    }

    [Fact]
    public void It_is_said_in_words()
    {
        WeatherDay[] days = [Day(0, 4, 20), Day(1, 5, null), Day(2, null, 1.5)];
        Assert.Equal("ETo 9.0 mm in all, at most 5.0 mm on Tue 14 July. Rain 21.5 mm in all, unknown on 1 day.", WeatherChartWords.Description(days, Words).ToString());
        Assert.Equal("ETo and rain of the last 3 days, Mon 13 July to Wed 15 July", WeatherChartWords.Title(days).ToString());
        Assert.Equal("ETo is unknown. Rain unknown on 1 day.", WeatherChartWords.Description([Day(0, null, null)], Words).ToString());
    }

    private static WeatherDay Day(int day, double? eto, double? rain) => new()
    {
        Date = InventedMorning.Date.AddDays(day - 2),
        Station = "shop",
        EtoMm = eto,
        Basis = eto is null ? EtoBasis.Open : EtoBasis.Hourly,
        Rain = [new GaugeDay("shop", rain, [], rain is null ? RainBasis.Unknown : RainBasis.Measured, 0)],
    };
}
