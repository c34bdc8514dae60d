using DailyAdjust.Core.Irrigation;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Irrigation;

/// <summary>Days that are kept are the days that would be laid out anew, however far one looks back and forth.</summary>
public sealed class OwnStartsTests
{
    [Fact]
    public void A_day_that_was_pushed_out_comes_back_as_it_was()
    {
        var found = 0;
        for (var seed = 1; seed <= 20; seed++)
        {
            var site = RandomCase.Of(seed).Site;
            var starts = new OwnStarts(site);
            foreach (var program in ZonePlan.AllPrograms(site))
            {
                foreach (var ahead in (int[])[0, 1, 511, 512, 513, 0, 1024, 1, 0])
                {
                    var day = site.Start.AddDays(ahead);
                    var kept = starts.On(program, day);
                    Assert.Equal(OwnStarts.Of(site, program, day), kept);
                    Assert.Same(kept, starts.On(program, day));
                    found += kept.Length;
                }
            }
        }

        Assert.True(found > 100, $"Too few to tell: {found} starts.");
    }
}
