using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Runs that ask water of the pump, against a look at every run for every span.</summary>
public class AskingRunsTests
{
    [Theory]
    [InlineData(0)]
    [InlineData(2)] // minutes between stations, in which a run asks nothing
    public void They_are_those_that_a_look_at_all_of_them_finds(int gapMinutes)
    {
        // Five programs that overlap in part, three stations each, the second of which has no known flow.
        var programs = Enumerable.Range(1, 5).Select(i => SmallCourse.EveryNight($"P{i}", $"2{i % 4}:{i * 7:00}")).ToList();
        var box = SmallCourse.Box with { Programs = programs, StationGap = TimeSpan.FromMinutes(gapMinutes) };
        var site = OneZone.Site(SmallCourse.Area, controller: box) with
        {
            PumpCapacityLPerMin = 1,
            Stations = [.. programs.SelectMany((p, i) => Enumerable.Range(1, 3).Select(n => SmallCourse.Station((3 * i) + n, minutes: 25 + n + i, programs: p.Id) with { FlowLPerMin = n == 2 ? null : 50 }))],
        };
        var from = site.Clock.DayStart(OneZone.First);
        var runs = new NightRuns(site).Between(new GrowIns(site, []), ZonePlan.AllPrograms(site), from, from.AddDays(3), (_, _) => 100);
        var asking = new AskingRuns(runs);
        var steps = new PumpLoad(site, []).Flow(runs);
        var several = 0;
        foreach (var step in steps)
        {
            List<PlannedRun> all = [.. runs.Where(r => r.Stations.Any(s => s.Station.FlowLPerMin is > 0 && s.Begins < step.To && s.Ends > step.From))];
            Assert.Equal(all.Select(r => (r.Program.Key, r.Start.At)), asking.In(step.From, step.To).Select(r => (r.Program.Key, r.Start.At)));
            several += all.Count > 1 ? 1 : 0;
        }

        Assert.True(several > 10 && steps.Count > 50, $"{several} of {steps.Count}");
    }
}
