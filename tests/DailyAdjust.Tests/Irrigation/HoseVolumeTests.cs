using DailyAdjust.Core.Logbook;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>A volume out of the hose spreads over the ground that it was said to go to: a litre on a square metre is a millimetre.</summary>
public class HoseVolumeTests
{
    [Theory]
    [InlineData(1000, 2000, 2)]
    [InlineData(1, 2, 2)]
    [InlineData(0.5, 2, 4)] // a pot beside the clubhouse
    public void Litres_over_square_metres(double groundM2, double litres, double mm)
    {
        var site = OneZone.Site(OneZone.Area);
        site = site with { Stations = [site.Stations[0] with { GroundM2 = groundM2 }] };
        var day = Assert.Single(OneZone.Run(site, [OneZone.Day(0, 0)], 40, [OneZone.Entry(0, new(9, 0), LogKind.Hose, litres, LogUnit.Litres)]));
        Assert.Equal(mm, day.HoseMm);
        Assert.Equal(40 - mm, day.DepletionMm);
    }
}
