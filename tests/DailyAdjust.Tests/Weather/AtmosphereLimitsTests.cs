using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Arguments at the ends of what the equations bear, and just beyond.</summary>
public sealed class AtmosphereLimitsTests
{
    [Theory]
    [InlineData(0, true)]
    [InlineData(100, true)]
    [InlineData(-0.5, false)]
    [InlineData(100.5, false)]
    public void Humidity_is_a_share_of_what_the_air_can_hold(double percent, bool bears) => AssertBears(bears, () => Atmosphere.VapourPressureKPa(20, percent));

    [Theory]
    [InlineData(0, 2, true)]
    [InlineData(200, 2, true)]
    [InlineData(-0.5, 2, false)]
    [InlineData(200.5, 2, false)]
    [InlineData(5, 0.1, true)]
    [InlineData(5, 100, true)]
    [InlineData(5, 0.09, false)]
    [InlineData(5, 100.5, false)]
    public void Wind_is_no_stronger_and_no_farther_from_the_ground(double speed, double height, bool bears) => AssertBears(bears, () => Atmosphere.WindSpeed2mMPerS(speed, height));

    private static void AssertBears(bool bears, Func<double> equation)
    {
        if (bears)
        {
            Assert.True(double.IsFinite(equation()));
        }
        else
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => equation());
        }
    }
}
