using Xunit;

namespace DailyAdjust.Tests.Irrigation;

public class InterceptionTests
{
    [Theory]
    [InlineData(0.99, 0.99)] // below 0.2 x 5: leaves only
    [InlineData(1.0, 0)] // not below
    public void Rain_is_held_against_a_fifth_of_reference_ET_not_of_the_turfs(double rainMm, double intercepted)
    {
        // K = 0.5: a fifth of ETc would be 0.5.
        var site = OneZone.Site(OneZone.Area with { Kc = OneZone.Kc(0.5) });
        Assert.Equal(intercepted, OneZone.Run(site, [OneZone.Day(0, 5, rainMm)], depletionMm: 20)[0].InterceptedMm, 9);
    }
}
