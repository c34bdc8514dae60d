using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class SiteWordsTests
{
    private static SiteWords Us { get; } = new(UnitSystem.Us, InventedCourse.Clock, InventedMorning.Date);

    private static SiteWords Metric { get; } = new(UnitSystem.Metric, InventedCourse.Clock, InventedMorning.Date);

    // 1 in = 25.4 mm, 1 US gal = 231 in³ = 3.785 411 784 L, 0 °C = 32 °F: NIST Special Publication 811 (2008), appendix B.
    [Theory]
    [InlineData(25.4, "1.00 in", "25.4 mm")]
    [InlineData(16.256, "0.64 in", "16.3 mm")]
    [InlineData(0.0, "0.00 in", "0.0 mm")]
    [InlineData(0.04, "under 0.01 in", "under 0.1 mm")]
    [InlineData(-2.54, "-0.10 in", "-2.5 mm")]
    [InlineData(null, "unknown", "unknown")]
    public void Depths(double? mm, string us, string metric)
    {
        Assert.Equal(us, Us.DepthOf(mm).ToString());
        Assert.Equal(metric, Metric.DepthOf(mm).ToString());
    }

    [Theory]
    [InlineData(3785.411784, "1,000 gal", "3.8 m³")]
    [InlineData(2423, "640 gal", "2.4 m³")]
    [InlineData(9842, "2,600 gal", "9.8 m³")]
    [InlineData(640, "170 gal", "640 L")]
    [InlineData(120_000, "32,000 gal", "120 m³")]
    public void Volumes_to_two_digits(double litres, string us, string metric)
    {
        Assert.Equal(us, Us.AboutVolume(litres));
        Assert.Equal(metric, Metric.AboutVolume(litres));
    }

    [Theory]
    [InlineData(0, "32 °F", "0.0 °C")]
    [InlineData(-0.01, "32 °F", "0.0 °C")]
    [InlineData(100, "212 °F", "100.0 °C")]
    public void Temperatures(double celsius, string us, string metric)
    {
        Assert.Equal(us, Us.Temperature(celsius));
        Assert.Equal(metric, Metric.Temperature(celsius));
    }

    [Fact]
    public void Flows()
    {
        Assert.Equal("1,000 gpm", Us.Flow(3785.411784));
        Assert.Equal("3,785 L/min", Metric.Flow(3785.411784));
    }

    [Fact]
    public void Days_near_the_sheet_have_names()
    {
        Assert.Equal("04:50 today", Us.When(InventedMorning.At(0, 4, 50)).ToString());
        Assert.Equal("23:10 yesterday", Us.When(InventedMorning.At(-1, 23, 10)).ToString());
        Assert.Equal("04:40 tomorrow", Us.When(InventedMorning.At(1, 4, 40)).ToString());
        Assert.Equal("21:30 Sat 18 July", Us.When(InventedMorning.At(3, 21, 30)).ToString());
    }
}
