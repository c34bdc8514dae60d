using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Irrigation;
using DailyAdjust.Tests.Plain;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>What does not fit, laid out many times over, against a look at every run for every span.</summary>
public class NightTroublesTests
{
    private const int Rounds = 40;

    [Theory]
    [InlineData(0, false)]
    [InlineData(2, false)] // minutes between stations, in which a run asks nothing
    [InlineData(0, true)]
    public void They_are_those_that_a_look_at_all_runs_finds_whatever_was_looked_at_before(int gapMinutes, bool isReduced)
    {
        var site = ThreeBoxes(gapMinutes);
        var midnight = site.Clock.DayStart(OneZone.First);
        LogEntry[] log = isReduced
            ? [new() { Time = new(OneZone.First, new(22, 10)), Kind = LogKind.Pump, Where = new(PlaceKind.Pump, "", ""), Value = 40, Unit = LogUnit.LitresPerMin, Until = new(OneZone.First.AddDays(1), new(0, 20)) }]
            : [];
        var pump = new PumpLoad(site, log);
        var troubles = new NightTroubles(site, pump);
        var nights = new NightRuns(site).StartsBetween(new GrowIns(site, []), ZonePlan.AllPrograms(site), midnight, midnight.AddDays(3));
        var dice = new Dice(7);
        var percents = site.Controllers.SelectMany(c => c.Programs.Select(p => new ProgramKey(c.Id, p.Id))).ToDictionary(k => k, _ => 100.0);
        int windows = 0, several = 0, reduced = 0;
        for (var round = 0; round < Rounds; round++)
        {
            percents[dice.OneOf([.. percents.Keys])] = dice.Whole(0, 12) * 10;
            var runs = nights.At((key, _) => percents[key]);
            IReadOnlyList<NightTrouble> plain = [.. PastClosing(site, runs), .. TooMuch(pump, runs)];
            var found = troubles.Of(runs);
            Assert.Equal(plain.Select(Text), found.Select(Text));
            Assert.Equal(plain.SelectMany(t => t.Asking).Select(a => a.Program).ToHashSet(), troubles.Programs(found));
            windows += plain.Count(t => t.IsWindow);
            several += plain.Count(t => t.Asking.Count > 2);
            reduced += plain.Count(t => t.Gives is 40);
        }

        Assert.True(windows > 50 && several > 100, $"{windows} past the closing, {several} of more than two runs");
        Assert.Equal(isReduced, reduced > 20);
    }

    [Fact]
    public void Runs_out_of_the_order_of_the_boxes_are_refused()
    {
        var site = ThreeBoxes(0);
        var midnight = site.Clock.DayStart(OneZone.First);
        var runs = new NightRuns(site).Between(new GrowIns(site, []), ZonePlan.AllPrograms(site), midnight, midnight.AddDays(1), (_, _) => 100);
        Assert.Throws<ArgumentException>(() => new NightTroubles(site, new PumpLoad(site, [])).Of([.. runs.Reverse()]));
    }

    /// <summary>Two programs each that overlap in part, three stations a program, the second of which has no known flow; two carry each other out, three do not.</summary>
    private static Site ThreeBoxes(int gapMinutes)
    {
        List<Controller> boxes = [.. Enumerable.Range(1, 3).Select(b => SmallCourse.Box with
        {
            Id = $"C{b}",
            Route = b,
            StationGap = TimeSpan.FromMinutes(gapMinutes),
            Programs = [.. Enumerable.Range(1, 2).Select(i => SmallCourse.EveryNight($"P{i}", $"{20 + b}:{b * i * 7:00}"))],
        })];
        return OneZone.Site(SmallCourse.Area, controller: boxes[0]) with
        {
            PumpCapacityLPerMin = 110,
            Window = new WateringWindow(new(20, 0), new(0, 30)),
            Controllers = boxes,
            Stations =
            [
                .. boxes.SelectMany(c => c.Programs.SelectMany((p, i) => Enumerable.Range(1, 3).Select(n =>
                    SmallCourse.Station((3 * i) + n, minutes: 25 + n + i, programs: p.Id) with { Key = new(c.Id, $"{(3 * i) + n}"), FlowLPerMin = n == 2 ? null : 49.95 + (c.Route * 0.05) }))),
            ],
        };
    }

    private static IEnumerable<NightTrouble> PastClosing(Site site, IReadOnlyList<PlannedRun> runs) => runs
        .Where(r => WindowMinutes.BeginsInside(site, r) && WindowMinutes.Outside(site, r) > 0)
        .Select(r => new NightTrouble(IsWindow: true, [new StartAsking(r.Program.Key, r.Start.At, 1)], 0, WindowMinutes.Outside(site, r), WindowMinutes.ClosingAfter(site.Clock, site.Window!, r.Begins)));

    private static IEnumerable<NightTrouble> TooMuch(PumpLoad pump, IReadOnlyList<PlannedRun> runs) =>
        from step in pump.Flow(runs)
        where step.LPerMin > pump.CapacityAt(step.From) + 1e-9
        select new NightTrouble(
            IsWindow: false,
            [.. runs.Where(r => r.Stations.Any(s => s.Station.FlowLPerMin is > 0 && s.Begins < step.To && s.Ends > step.From)).Select(r => new StartAsking(r.Program.Key, r.Start.At, r.Stations.First(s => s.Begins <= step.From && s.Ends > step.From).Station.FlowLPerMin!.Value))],
            pump.CapacityAt(step.From),
            (step.To - step.From).TotalMinutes,
            step.From);

    private static string Text(NightTrouble trouble) =>
        FormattableString.Invariant($"{trouble.IsWindow} {trouble.Gives} {trouble.Minutes:R} {trouble.From:O}: {string.Join(", ", trouble.Asking.Select(a => FormattableString.Invariant($"{a.Program} {a.Start:O} {a.Asks:R}")))}");
}
