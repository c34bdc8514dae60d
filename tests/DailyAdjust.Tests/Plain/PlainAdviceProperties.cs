using DailyAdjust.Core.Logbook;
using Xunit;

namespace DailyAdjust.Tests.Plain;

public class PlainAdviceProperties
{
    [Fact]
    public void The_random_mornings_reach_every_advice_that_weather_and_settings_can_give()
    {
        var found = new Dictionary<AdviceKind, int>();
        var numbers = 0;
        for (var seed = 1; seed <= 40; seed++)
        {
            var site = RandomCase.Of(seed);
            foreach (var line in PlainAdvice.Run(site.Morning(site.Weather[^1].Date)))
            {
                found[line.Advice] = found.GetValueOrDefault(line.Advice) + 1;
                numbers += line.ExactPercent > 0 ? 1 : 0;
                if (line.Percent is { } percent)
                {
                    Assert.InRange(percent, 0, 1000);
                }
            }
        }

        Assert.All([AdviceKind.Set, AdviceKind.Skip, AdviceKind.Resume, AdviceKind.Leave, AdviceKind.KeepOff], kind => Assert.True(found.GetValueOrDefault(kind) > 0, kind.ToString()));
        Assert.True(numbers > 20);
    }
}
