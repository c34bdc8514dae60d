using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Explain;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// A grow-in that is ordered for the days to come: tonight's number is for the program's own starts before it, and what it will give is
/// known. One start each night at 22:00, 10 mm an hour, 5 mm drawn a day, 50 mm allowed.
/// </summary>
public class GrowInAheadTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly VisitDays MondayAndThursday = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]);

    /// <summary>6 starts of 4 min from Tuesday 07:00 on: 4 mm on Tuesday.</summary>
    private static readonly LogEntry FromTuesday = Order(Monday.AddDays(1), 6, 4, Monday.AddDays(4));

    [Theory]
    [InlineData(43.4, true)] // 48.4 down on Monday night; of Tuesday's 5 mm 4.8 are drawn by 17:00 and 3.3 given: 49.9 before the last start
    [InlineData(43.7, false)]
    public void What_it_gives_counts_when_a_zone_is_to_wait_for_it(double depletionMm, bool canWait)
    {
        var course = SmallCourse.OneStation(depletionMm) with { Log = [FromTuesday] };
        Assert.Equal(canWait, Assert.Single(course.Advice().Zones).CanWait);
        Followed(course);
    }

    [Fact]
    public void A_number_is_for_the_programs_own_starts_before_it()
    {
        // Nobody comes before Thursday: 7 and 5 mm are missing when Monday's hour begins, the only one.
        var course = SmallCourse.OneStation(7) with { Controller = Visited(MondayAndThursday), Log = [FromTuesday] };
        Assert.Equal(120, course.Advice().ExactPercent!.Value, 3);
        Followed(course);

        // From Wednesday on: two hours, the second for Tuesday's 5 mm alone; after both nothing is missing.
        Assert.Equal(85, (course with { Log = [FromTuesday with { Time = new(Monday.AddDays(2), new(1, 0)) }] }).Advice().ExactPercent!.Value, 3);
    }

    [Fact]
    public void Where_it_takes_tonights_start_there_is_nothing_to_decide()
    {
        var advice = (SmallCourse.OneStation(30) with { Log = [FromTuesday with { Time = new(Monday, new(21, 0)) }] }).Advice();
        Assert.Equal((AdviceKind.Leave, null), (advice.Advice, advice.ExactPercent));
    }

    [Fact]
    public void No_visit_judges_the_program_while_it_lasts()
    {
        var wednesday = SmallCourse.OneStation(20) with { Date = Monday.AddDays(2), Controller = Visited(MondayAndThursday) };
        Assert.Equal(Monday.AddDays(3), wednesday.Advice().LookAgain);
        Assert.Equal(Monday.AddDays(7), (wednesday with { Log = [Order(Monday.AddDays(3), 6, 4, Monday.AddDays(6))] }).Advice().LookAgain);
    }

    [Fact]
    public void A_program_that_is_left_out_is_on_again_for_it()
    {
        // Due beyond 25 mm: 10 on Monday, 30 on Thursday night. One start of 30 min on Tuesday and of 45 on Wednesday give 12.5, and 27.5 are missing on Saturday night; but on Tuesday it has to run.
        var course = SmallCourse.OneStation(10, SmallCourse.Area with { RunAt = 0.5 });
        Assert.Equal((AdviceKind.Skip, Monday.AddDays(3)), (course.Advice().Advice, course.Advice().LookAgain!.Value));
        var growsIn = course with { Log = [Order(Monday.AddDays(1), 1, 30, Monday.AddDays(2))] };
        Assert.Equal((AdviceKind.Skip, Monday.AddDays(1), null), (growsIn.Advice().Advice, growsIn.Advice().LookAgain!.Value, growsIn.Advice().After));
        Followed(growsIn);
    }

    [Fact]
    public void What_comes_after_a_number_knows_what_it_gives_at_that_number()
    {
        // 50 % tonight leave nothing missing. From Tuesday to Thursday 18, 32 and 46 min are keyed, half of which run: 1.5, 2.7 and 3.8 mm of 5 a day. 12 are missing on Friday night.
        var course = SmallCourse.OneStation(0) with { Log = [Order(Monday.AddDays(1), 1, 18, Monday.AddDays(3))] };
        var advice = course.Advice();
        Assert.Equal((50d, Monday.AddDays(4), 120d), (advice.Percent!.Value, advice.After!.On, advice.After.Percent));
    }

    private static Controller Visited(VisitDays days) => SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = days }] };

    /// <summary>Explained with the same numbers.</summary>
    private static void Followed(SmallCourse course) => Assert.True(ProgramStepsTests.Followed(course.Inputs(), []) > 10);

    private static LogEntry Order(DateOnly first, int starts, double minutes, DateOnly last) => new()
    {
        Time = new(first, new(1, 0)),
        Kind = LogKind.GrowIn,
        Where = new(PlaceKind.Program, "C1", "P1"),
        Times = starts,
        Value = minutes,
        Unit = LogUnit.Minutes,
        Until = new(last, null),
    };
}
