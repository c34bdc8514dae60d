using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>What a program needs, where the example site cannot tell right from wrong. Numbers are worked out by hand.</summary>
public class NeedTests
{
    private static readonly DateTimeOffset AtTwo = new(SmallCourse.Monday.ToDateTime(new(2, 0)), TimeSpan.Zero);

    [Fact]
    public void Rain_since_midnight_is_booked_as_it_fell_with_nothing_intercepted()
    {
        // 20 missing, 0.5 fell (below 0.2 x 5 = 1.0), 5 drawn: 24.5 to put back at 10 mm an hour.
        var course = SmallCourse.OneStation(20) with { RainSinceMidnight = [new RainFall(AtTwo, 0.5)] };
        Assert.Equal(245, course.Advice().ExactPercent!.Value, 3);
    }

    [Fact]
    public void Rain_since_midnight_has_no_runoff_taken_off()
    {
        // 45 missing, 40 fell, 5 drawn: 10. With curve number 90, 17 mm of the 40 would run off.
        var wet = SmallCourse.Area with { Soil = SmallCourse.Area.Soil with { CurveNumber = 90 } };
        var course = SmallCourse.OneStation(45, wet) with { RainSinceMidnight = [new RainFall(AtTwo, 40)] };
        Assert.Equal(100, course.Advice().ExactPercent!.Value, 3);
    }

    [Theory]
    [InlineData(38, 200, true)] // 48 before the next start; 20 mm then, 33 before the one after
    [InlineData(38, 10, false)] // 48 before the next start; 1 mm then, 52 before the one after
    [InlineData(30, 10, true)] // 40, then 44
    public void Can_wait_asks_what_the_largest_percentage_can_do_on_the_next_date(double depletion, double most, bool canWait)
    {
        var course = SmallCourse.OneStation(depletion) with { Controller = SmallCourse.Box with { PercentMax = most } };
        Assert.Equal(canWait, course.Advice().Zones[0].CanWait);
    }

    [Fact]
    public void The_first_starts_own_depletion_is_no_part_of_can_wait()
    {
        // 53 before 22:00 is past 50; at 23:00 another program gives 10: 48 before the next start.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "23:00")] },
            Stations = [SmallCourse.Station(1, programs: ["P1", "P2"])],
            DepletionMm = [48],
        };
        Assert.True(course.Advice().Zones[0].CanWait);
    }

    [Fact]
    public void Satisfy_counts_the_ground_that_is_not_set_aside()
    {
        // Needs 60, 70, ... 120 and three of 250. Median by ground 100, so beyond 125 and up to a third: the three are set aside.
        // 80 % of the other seven is met with the sixth: 110. Of all ten it would be 250.
        var advice = Ten(20).Advice();
        Assert.Equal(110, advice.ExactPercent!.Value, 3);
        Assert.Equal(["8", "9", "10"], advice.Zones.Where(z => z.SetAside).Select(z => z.Station.Station));
    }

    [Fact]
    public void Can_wait_counts_the_ground_that_is_not_set_aside()
    {
        // The three dry ones (53 before the start, 58 before the next) cannot wait; of the other seven all can, and none is due.
        Assert.Equal(AdviceKind.Skip, Ten(48, SmallCourse.Area with { RunAt = 1 }).Advice().Advice);
    }

    [Theory]
    [InlineData(60.0, new[] { "2" })] // half the ground is met with 100 %, so 130 is far more; one of the two is a fifth, both would be above a third
    [InlineData(20.0, new string[0])] // half the ground is met with 130 %
    [InlineData(null, new string[0])] // one station's ground is unknown: by station
    public void The_median_goes_by_ground(double? groundOfTheWet, string[] aside)
    {
        var course = new SmallCourse
        {
            Stations = [SmallCourse.Station(1, groundOfTheWet), SmallCourse.Station(2, 20), SmallCourse.Station(3, 20)],
            DepletionMm = [5, 8, 8],
        };
        Assert.Equal(aside, course.Advice().Zones.Where(z => z.SetAside).Select(z => z.Station.Station));
    }

    [Fact]
    public void Where_not_even_1000_percent_puts_the_need_back_it_is_1000()
    {
        // 1 minute at 100 % is a sixth of a millimetre: 1000 % is 1.7 of the 35 missing. Nothing goes beyond 50 before the next start.
        var area = SmallCourse.Area with { Replace = 0.5 };
        Assert.Equal(1000, SmallCourse.OneStation(30, area, minutes: 1).Advice().ExactPercent);
    }

    [Fact]
    public void Where_no_percentage_stays_within_allowable_depletion_it_fills_to_capacity()
    {
        // Two starts a night: before the second, at 22:30, nothing helps but the first. Demand of 60 a day is past RAW by the next night whatever is given.
        var thirsty = SmallCourse.Area with { Kc = [.. Enumerable.Repeat(12.0, 12)], LeaveEmpty = 0.8, Replace = 0.1 };
        var advice = SmallCourse.OneStation(0, thirsty).Advice();

        // Ks falls below 1 past 50: what was drawn by 22:00 is 60 x 1 (Ks is taken at dawn, at 0): 60 to fill.
        Assert.Equal(600, advice.ExactPercent!.Value, 3);
    }

    private static SmallCourse Ten(double dry, Area? area = null) => new()
    {
        Stations = [.. Enumerable.Range(1, 10).Select(i => SmallCourse.Station(i, area: area))],
        DepletionMm = [1, 2, 3, 4, 5, 6, 7, dry, dry, dry],
    };
}
