using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>A rain switch of a quarter of an inch that dries in a day, against a gauge that tips 0.01 in at a time.</summary>
public class RainSwitchesTests
{
    private static readonly DateTimeOffset Noon = new(OneZone.First.ToDateTime(new(12, 0)), TimeSpan.Zero);

    [Theory]
    [InlineData(24, 0, false)]
    [InlineData(25, 0, true)] // 25 tips sum to a hair under 6.35 mm
    [InlineData(50, 0, true)]
    [InlineData(25, 23.9, true)]
    [InlineData(25, 24, false)] // dry again
    public void It_shuts_at_its_own_depth_and_opens_when_it_is_dry(int tips, double hoursAfter, bool shut)
    {
        List<RainFall> falls = [.. Enumerable.Range(0, tips).Select(i => new RainFall(Noon.AddMinutes(i - tips + 1), 0.254))];
        var site = OneZone.Site(OneZone.Area);
        var box = site.Controllers[0] with { RainSwitch = new RainSwitch(6.35, TimeSpan.FromHours(24)) };
        var switches = new RainSwitches(site with { Controllers = [box] }, [new GaugeDay("yard", 0.254 * tips, falls, RainBasis.Measured, 0)]);
        Assert.Equal(shut, switches.At(box.Id, Noon.AddHours(hoursAfter)) is not null);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public void Rain_of_more_than_45_days_ago_is_forgotten_however_long_it_dries(int ticksBefore, bool shut)
    {
        var site = OneZone.Site(OneZone.Area);
        var box = site.Controllers[0] with { RainSwitch = new RainSwitch(6, TimeSpan.FromDays(60)) };
        var switches = new RainSwitches(site with { Controllers = [box] }, [new GaugeDay("yard", 7, [new RainFall(Noon.AddDays(-LookBack.Days).AddTicks(-ticksBefore), 7)], RainBasis.Measured, 0)]);
        Assert.Equal(shut, switches.At(box.Id, Noon) is not null);
    }
}
