using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Tests.Recorded;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Zones that share an outline have the days to come that they would have by themselves; what is another for one of them is not shared.</summary>
public sealed class ForecastOutlineTests
{
    [Fact]
    public void What_is_shared_is_what_each_zone_would_have_alone()
    {
        var (shared, apart) = (0, 0);
        for (var seed = 1; seed <= 120; seed++)
        {
            var course = RichCase.Of(seed, isCoarse: false);
            var inputs = RichCase.Morning(course, course.Weather[^2].Date, course.Site.Report.At[0], seed, isCoarse: false);
            foreach (var program in MorningCalculation.Judge(inputs).Settled.Select(s => s.Case).Where(c => c.Horizon.Starts.Count > 0))
            {
                var zones = program.Context.ZonesOf(program.Program);
                var outlines = zones.Select(zone => new ForecastOutline(program.Context, zone, program.Program, program.Horizon, Setting.Off, default, program.NewSettings)).ToList();
                for (var i = 1; i < zones.Count; i++)
                {
                    if (!outlines[0].Serves(zones[i]))
                    {
                        apart++;
                        continue;
                    }

                    Assert.Equal(outlines[i].Of(zones[i]).Steps.ToArray(), outlines[0].Of(zones[i]).Steps.ToArray());
                    shared++;
                }
            }
        }

        Assert.True(shared > 100 && apart > 20, $"Too few to tell: {shared} shared, {apart} apart.");
    }
}
