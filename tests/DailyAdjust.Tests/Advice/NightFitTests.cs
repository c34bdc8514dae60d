using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Whether the programs fit the night. Dry ground, so that every program stays at its setting or above; one hour at 100 %.</summary>
public class NightFitTests
{
    private static readonly DateTimeOffset Evening = new(SmallCourse.Monday.ToDateTime(new(22, 0)), TimeSpan.Zero);

    [Fact]
    public void Stations_run_one_after_another_with_the_gap_between()
    {
        var course = Held(2) with { Controller = SmallCourse.Box with { StationGap = TimeSpan.FromMinutes(2) } };
        Assert.Equal(Evening.AddMinutes(122), course.Advice().Finishes);
    }

    [Theory]
    [InlineData(ProgramOverlap.Together, 0)]
    [InlineData(ProgramOverlap.Stack, 30)] // begins when the first has ended
    public void Two_programs_of_one_controller_overlap(ProgramOverlap overlap, double pushedBackMinutes)
    {
        // 22:00 to 23:00, and 22:30 to 23:30: half an hour. At 50 % the first ends in time.
        var course = TwoPrograms("22:30", overlap);
        var sheet = course.Sheet();
        var found = Assert.Single(sheet.Fit.Overlaps);
        Assert.Equal(("P1", "P2", 30d, 50d), (found.First, found.Second, found.Minutes, found.LargestPercent));
        Assert.Equal(Evening.AddMinutes(90 + pushedBackMinutes), sheet.Programs[1].Finishes);
    }

    [Fact]
    public void One_after_the_other_they_do_not() => Assert.Empty(TwoPrograms("23:00", ProgramOverlap.Together).Sheet().Fit.Overlaps);

    [Theory]
    [InlineData("20:00", "23:00", 0)]
    [InlineData("22:01", "06:00", 1)] // begins too early
    [InlineData("20:00", "22:10", 1)] // ends too late, and a quarter of an hour would be a skip
    public void Runs_outside_the_window_are_named(string opens, string closes, int found)
    {
        var course = Held(1) with { Window = new(TimeOnly.ParseExact(opens, "HH:mm", null), TimeOnly.ParseExact(closes, "HH:mm", null)) };
        Assert.Equal(found, course.Sheet().Fit.Window.Count);
    }

    [Fact]
    public void The_pump_is_asked_for_what_runs_at_once()
    {
        // 100 L/min a station: 200 between 22:10 and 23:00, of 150. Neither can be so short that they miss one another.
        var found = Assert.Single((TwoPrograms("22:10", ProgramOverlap.Together) with { Pump = 150 }).Sheet().Fit.Pump);
        Assert.Equal((Evening.AddMinutes(10), Evening.AddMinutes(60), 200d, 150d), (found.From, found.To, found.FlowLPerMin, found.CapacityLPerMin));
    }

    [Fact]
    public void A_reduced_pump_counts_until_its_end()
    {
        // 80 L/min until 22:20, then 150 again.
        var entry = new LogEntry
        {
            Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
            Kind = LogKind.Pump,
            Where = new(PlaceKind.Pump, "", ""),
            Value = 80,
            Unit = LogUnit.LitresPerMin,
            Until = new(SmallCourse.Monday, new(22, 20)),
        };
        var found = Assert.Single((Held(1) with { Pump = 150, Log = [entry] }).Sheet().Fit.Pump);
        Assert.Equal((Evening, Evening.AddMinutes(20), 100d, 80d), (found.From, found.To, found.FlowLPerMin, found.CapacityLPerMin));
    }

    [Fact]
    public void The_stop_rule_is_the_least_rain_that_makes_it_a_skip()
    {
        // Off, 20 + 5 missing tonight, 10 mm an hour: with rain r the need is (25 - r) x 10 %. Up to 25 % it is left out: 22.5 mm.
        var course = SmallCourse.OneStation(20) with
        {
            Log = [new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") }],
        };
        Assert.Equal(22.5, course.Advice().StopRule!.RainMm, 6);

        // Nothing up to 50 mm would do where the ground is 90 down: then there is no rule.
        Assert.Null((course with { DepletionMm = [90] }).Advice().StopRule);
    }

    [Fact]
    public void A_program_that_is_left_to_run_has_its_stop_rule_too()
    {
        // 5 + 5 missing tonight and 100 % puts back just that: with 7.5 mm of rain the need is 25 %.
        var advice = Held(1).Advice();
        Assert.Equal((AdviceKind.Leave, 7.5), (advice.Advice, Math.Round(advice.StopRule!.RainMm, 6)));
    }

    /// <summary>Needs exactly what is set, so that nothing changes: 5 and 5 missing tonight.</summary>
    private static SmallCourse Held(int stations) => new()
    {
        Stations = [.. Enumerable.Range(1, stations).Select(i => SmallCourse.Station(i) with { FlowLPerMin = 100 })],
        DepletionMm = [.. Enumerable.Repeat(5.0, stations)],
    };

    private static SmallCourse TwoPrograms(string secondStart, ProgramOverlap overlap) => new()
    {
        Controller = SmallCourse.Box with { Overlap = overlap, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", secondStart)] },
        Stations = [SmallCourse.Station(1, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, programs: "P2") with { FlowLPerMin = 100 }],
        DepletionMm = [5, 5],
    };
}
