using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>A gauge of which nothing is known has the rain of the gauge that the site names in its place.</summary>
public sealed class RainSubstituteTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);

    [Fact]
    public void Its_own_rain_comes_first()
    {
        var gauge = Days(new("yard", "yard", "barn"), new("barn", null)).RainAt("yard");
        Assert.Equal((24, RainBasis.Measured, ""), (gauge.RainMm, gauge.Basis, gauge.Substitute));
    }

    [Fact]
    public void What_a_person_read_off_it_comes_before_another_gauge()
    {
        var gauge = Scene(new("far", null, "yard"), new("yard", "yard"))
            .Days(Day, Day, [WeatherScene.Rain("far", Day, null, 3)], ("yard", Wet))[0].RainAt("far");
        Assert.Equal((3, RainBasis.Logbook), (gauge.RainMm, gauge.Basis));
    }

    [Fact]
    public void Else_the_substitutes_and_the_day_says_so()
    {
        var gauge = Days(new("far", null, "yard"), new("yard", "yard")).RainAt("far");
        Assert.Equal((24, RainBasis.Substitute, "yard"), (gauge.RainMm, gauge.Basis, gauge.Substitute));
        Assert.Equal(24, gauge.Falls.Count);
    }

    [Fact]
    public void A_substitute_may_have_its_own()
    {
        var day = Days(new("far", null, "barn"), new("barn", null, "yard"), new("yard", "yard"));
        Assert.All(["far", "barn"], id => Assert.Equal("yard", day.RainAt(id).Substitute));
    }

    [Fact]
    public void Two_that_name_each_other_and_know_nothing_stay_unknown()
    {
        var day = Days(new("far", null, "barn"), new("barn", null, "far"));
        Assert.All(day.Rain, gauge => Assert.Equal((null, RainBasis.Unknown), (gauge.RainMm, gauge.Basis)));
    }

    private static readonly IReadOnlyList<Reading> Wet = new WeatherScene().Steady(Day.AddDays(-1), Day, rainMm: 1);

    private static WeatherScene Scene(params Gauge[] gauges) => new() { Gauges = gauges };

    private static WeatherDay Days(params Gauge[] gauges) => Scene(gauges).Days(Day, Day, ("yard", Wet))[0];
}
