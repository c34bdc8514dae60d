using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Plan;

/// <summary>What `check` says of base programs. ETo 5 mm a day in every month, K 1, 50 mm allowed, 10 mm a start.</summary>
public class BaseProgramCheckTests
{
    [Fact]
    public void A_sound_program_gives_no_cause() => Assert.Empty(Check(SmallCourse.OneStation(0)));

    [Fact]
    public void Programs_that_overlap_at_100_percent_already()
    {
        // An hour each, half an hour apart.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:30")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [0, 0],
        };
        Assert.Contains("P1 and P2 overlap at 100 % already, by up to 30 min", Assert.Single(Check(course)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_with_several_overlaps_is_one_day()
    {
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "20:00", "22:00"), SmallCourse.EveryNight("P2", "20:30", "22:30")] },
            Stations = [SmallCourse.Station(1, minutes: 40, programs: "P1"), SmallCourse.Station(2, minutes: 40, programs: "P2")],
            DepletionMm = [0, 0],
        };
        Assert.Contains("P1 and P2 overlap at 100 % already, by up to 10 min on 28 of 28 days", Assert.Single(Check(course)), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_the_boxes_that_run_while_the_pump_is_asked_most_are_named()
    {
        // P0 ends as P2 begins, P3 begins as it ends: neither runs beside P1 and P2.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Overlap = ProgramOverlap.Together, Programs = [SmallCourse.EveryNight("P0", "21:20"), SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:20"), SmallCourse.EveryNight("P3", "22:40")] },
            Stations = [.. Enumerable.Range(0, 4).Select(i => SmallCourse.Station(i + 1, minutes: i == 2 ? 20 : 60, programs: "P" + i) with { FlowLPerMin = i is 1 or 2 ? 100 : 40 })],
            DepletionMm = [0, 0, 0, 0],
        };
        var pump = Assert.Single(BaseProgramCheck.Of(course.Site with { PumpCapacityLPerMin = 150 }), l => l.StartsWith("pump", StringComparison.Ordinal));
        Assert.Contains("on 28 of 28 days (C1/P1, C1/P2): move a start.", pump, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_of_two_programs_gets_water_on_each_ones_own_days()
    {
        // 10 minutes at 200 % are 3.3 mm: every night 23.3 mm a week, every other night half of it.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "20:00"), SmallCourse.EveryNight("P2", "23:00") with { Days = new WaterDays.EveryNth(2, SmallCourse.Monday) }] },
            Stations = [SmallCourse.Station(1, minutes: 10, programs: ["P1", "P2"])],
            DepletionMm = [0],
        };
        Assert.Empty(Check(course));
        var less = Check(course with { Stations = [SmallCourse.Station(1, minutes: 9, programs: ["P1", "P2"])] });
        Assert.Equal(2, less.Count);
        Assert.All(less, l => Assert.Contains("even at 200 % a week gives 31.5 mm of the 35.0 mm", l, StringComparison.Ordinal));
    }

    [Fact]
    public void Days_too_far_apart_for_the_allowable_depletion()
    {
        // Every 14 days: 70 mm, of which 50 are allowed; at the dial's 200 % an hour gives 20 in two weeks.
        var course = SmallCourse.OneStation(0, minutes: 300) with
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Days = new WaterDays.EveryNth(14, SmallCourse.Monday) }] },
        };
        Assert.Contains("14 days from start to start draw 70.0 mm", Assert.Single(Check(course)), StringComparison.Ordinal);
    }

    [Fact]
    public void Minutes_that_cannot_meet_the_peak_at_the_end_of_the_dial()
    {
        // 10 minutes at 200 % are 3.3 mm a day of 5.
        Assert.Contains("even at 200 % a week gives 23.3 mm of the 35.0 mm", Assert.Single(Check(SmallCourse.OneStation(0, minutes: 10))), StringComparison.Ordinal);
    }

    private static IReadOnlyList<string> Check(SmallCourse course) => BaseProgramCheck.Of(course.Site);
}
