using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>Percentages through the year, and the rain that they leave to the sky.</summary>
public class SeasonPercentTests
{
    private static readonly double[] Eto = [0, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1];

    /// <summary>Colorado State Univ. Extension: month's need / peak month's need; base minutes are set for the peak = 100 %.</summary>
    [Fact]
    public void A_month_gets_its_need_over_the_peak_months_need()
    {
        var season = Assert.Single(SeasonPercent.Of(SmallCourse.OneStation(0).Site, Eto, new MonthRain?[12]));
        Assert.Equal(100, season.Months[6].NoRain.Percent);
        Assert.Equal(50, season.Months[3].NoRain.Percent);
        Assert.Equal(500.0 / 6, season.Months[5].NoRain.ExactPercent, 1e-9);
        Assert.Equal(85, season.Months[5].NoRain.Percent);
        Assert.Equal(0, season.Months[0].NoRain.Percent);
        Assert.All(season.Months, m => Assert.Null(m.AfterRain));
    }

    [Fact]
    public void Usual_rain_is_taken_off_the_months_need()
    {
        var rain = new MonthRain?[12];
        (rain[6], rain[1]) = (new(93, FromNormals: true), new(500, FromNormals: true));
        var months = Assert.Single(SeasonPercent.Of(SmallCourse.OneStation(0).Site, Eto, rain)).Months;
        Assert.Equal(50, months[6].AfterRain!.ExactPercent, 1e-9);
        Assert.Equal(0, months[1].AfterRain!.Percent);
        Assert.Null(months[2].AfterRain);
    }

    /// <summary>Texas A&amp;M: the first 0.10 in lost; to 1 in in full; 1 to 2 in two thirds; above 2 in none.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(0.08, 0)]
    [InlineData(0.25, 0.15)]
    [InlineData(1.0, 0.90)]
    [InlineData(1.5, 1.2333)]
    [InlineData(2.0, 1.5667)]
    [InlineData(3.0, 1.5667)]
    public void Effective_rain_of_a_day(double inches, double effective) =>
        Assert.Equal(effective, EffectiveRain.OfDay(inches * Depth.MmPerInch) / Depth.MmPerInch, 0.00005);

    /// <summary>From memory: FAO training manual 3; both branches meet at 75 mm.</summary>
    [Theory]
    [InlineData(10, 0)]
    [InlineData(35, 11)]
    [InlineData(75, 35)]
    [InlineData(90, 47)]
    public void Effective_rain_of_a_month_of_which_only_the_total_is_known(double mm, double effective) =>
        Assert.Equal(effective, EffectiveRain.OfMonthlyTotal(mm), 1e-9);
}
