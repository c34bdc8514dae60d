using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>When the present setting stays.</summary>
public class GoodEnoughTests
{
    private static readonly VisitDays MondayAndThursday = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]);

    [Theory]
    [InlineData(42, AdviceKind.Set)] // three nights of 7 mm on 5: 2 mm drain each night, 6 in all; worth is 5 % of 50 = 2.5
    [InlineData(34.5, AdviceKind.Leave)] // 35 minutes give 5.83: 0.83 each night, 2.5 in all
    public void What_drains_is_summed_over_the_starts_of_the_horizon(double minutes, AdviceKind expected)
    {
        var course = SmallCourse.OneStation(0, minutes: minutes) with
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = MondayAndThursday }] },
        };
        Assert.Equal(expected, course.Advice().Advice);
    }

    [Theory]
    [InlineData(7, AdviceKind.Leave)] // 6.7 of 7 mm: 95 % is 6.65 minutes, which the box rounds to 7 again
    [InlineData(70, AdviceKind.Set)] // a tenth of the rate: 95 % is 67 minutes, not 70
    public void Where_no_stations_minutes_would_change_it_is_left(double minutes, AdviceKind expected)
    {
        // Nothing is worth ignoring here, so the 0.3 mm that drain are not good enough.
        var course = SmallCourse.OneStation(1.7, minutes: minutes);
        course = course with
        {
            Report = new ReportPolicy { Worth = 0 },
            Stations = [course.Stations[0] with { Rate = new(420 / minutes) }],
        };
        var advice = course.Advice();
        Assert.Equal(expected, advice.Advice);
        Assert.Equal(95.7143, advice.ExactPercent!.Value, 3);
    }

    [Theory]
    [InlineData(152.4, 150)]
    [InlineData(152.5, 155)] // halves up
    [InlineData(250, 200)] // the dial ends at 200
    public void The_number_is_the_nearest_the_dial_can_show(double exact, double number)
    {
        var advice = SwitchedOff((exact / 10) - 5).Advice();
        Assert.Equal(exact, advice.ExactPercent!.Value, 3);
        Assert.Equal((AdviceKind.Resume, number), (advice.Advice, advice.Percent));
        Assert.Equal(exact > 200, advice.Shortfall is not null);
    }

    [Fact]
    public void A_cut_off_number_says_what_is_short()
    {
        // 25 mm wanted, 20 given: 5 mm, half an hour.
        var cut = SwitchedOff(20).Advice().Shortfall!;
        Assert.Equal(5, cut.DepthMm, 6);
        Assert.Equal(30, cut.Minutes, 6);
    }

    [Fact]
    public void Left_at_the_dials_end_it_says_that_ground_stays_short()
    {
        // 90 missing, 10 given, 50 allowed: the dial has no more, and the ground is far from well.
        var advice = (SmallCourse.OneStation(90) with { Controller = SmallCourse.Box with { PercentMax = 100 } }).Advice();
        Assert.Equal(AdviceKind.Leave, advice.Advice);
        Assert.Contains("The dial is at its end", advice.Reason.ToString(), StringComparison.Ordinal);
        Assert.True(advice.Zones[0].ShortMm > 0);
    }

    [Fact]
    public void The_number_is_never_0()
    {
        // 52 % on a dial with steps of 200 is nearest to 0: one step.
        var course = SmallCourse.OneStation(0.2) with { Report = new ReportPolicy { SkipBelowPercent = 0, Worth = 0 }, Controller = SmallCourse.Box with { PercentStep = 200, PercentMax = 400 } };
        var advice = course.Advice();
        Assert.Equal(52, advice.ExactPercent!.Value, 3);
        Assert.Equal(200, advice.Percent);
    }

    /// <summary>Off since Sunday, so that nothing but the number is asked for.</summary>
    private static SmallCourse SwitchedOff(double depletionMm) => SmallCourse.OneStation(depletionMm) with
    {
        Log = [new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") }],
    };
}
