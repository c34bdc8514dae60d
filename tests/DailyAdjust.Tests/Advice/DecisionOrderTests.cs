using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Which rule applies first, and what a round says.</summary>
public class DecisionOrderTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly DateOnly Sunday = SmallCourse.Monday.AddDays(-1);

    [Fact]
    public void A_hold_that_lasts_to_tonights_start_comes_first()
    {
        var advice = Dry(Entry(LogKind.Hold) with { Until = new(SmallCourse.Monday, null), Note = "tournament" }).Advice();
        Assert.Equal((AdviceKind.Off, SmallCourse.Monday, (double?)null), (advice.Advice, advice.OffUntil!.Value, advice.Percent));
        Assert.Contains("tournament", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_hold_that_ends_before_tonights_start_does_not_stop_it() =>
        Assert.Equal(AdviceKind.Set, Dry(Entry(LogKind.Hold) with { Until = new(SmallCourse.Monday, new(18, 0)) }).Advice().Advice);

    [Fact]
    public void No_water_and_an_event_stop_what_starts_in_them()
    {
        var spray = Dry(Entry(LogKind.NoWater) with { Until = new(SmallCourse.Monday, new(23, 0)), Note = "foliar feeding" }).Advice();
        Assert.Equal((AdviceKind.Off, SmallCourse.Monday), (spray.Advice, spray.OffUntil!.Value));
        Assert.Contains("no water, foliar feeding", spray.Reason.ToString(), StringComparison.Ordinal);
        Assert.Equal(AdviceKind.Set, Dry(Entry(LogKind.NoWater) with { Until = new(SmallCourse.Monday, new(21, 0)) }).Advice().Advice);

        // Until Tuesday 18:00 and 20 hours before: from 22:00 tonight.
        LogEntry Event(double hours) => Entry(LogKind.Event) with { Until = new(SmallCourse.Monday.AddDays(1), new(18, 0)), Value = hours * 60, Unit = LogUnit.Minutes, Note = "championship" };
        Assert.Equal(AdviceKind.Off, Dry(Event(20)).Advice().Advice);
        Assert.Equal(AdviceKind.Set, Dry(Event(19)).Advice().Advice);
    }

    [Fact]
    public void A_closed_season_comes_before_everything() =>
        Assert.Equal(AdviceKind.Off, Dry(Entry(LogKind.Season) with { Where = new(PlaceKind.Site, "", ""), Text = "closed" }).Advice().Advice);

    [Fact]
    public void Without_a_visit_it_is_left_and_off_it_stays_off()
    {
        var thursdays = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Thursday]) }] };
        var left = (Dry() with { Controller = thursdays }).Advice();
        Assert.Equal((AdviceKind.Leave, 100d, null), (left.Advice, left.Percent!.Value, left.ExactPercent));
        var off = (Dry(Entry(LogKind.Off)) with { Controller = thursdays }).Advice();
        Assert.Equal((AdviceKind.KeepOff, 0d, SmallCourse.Monday.AddDays(3)), (off.Advice, off.Percent!.Value, off.LookAgain!.Value));
    }

    [Fact]
    public void Wet_ground_is_skipped_and_off_it_stays_off()
    {
        Assert.Equal((AdviceKind.Skip, (double?)null), (SmallCourse.OneStation(0).Wet().Advice, SmallCourse.OneStation(0).Wet().Percent));
        Assert.Equal(AdviceKind.KeepOff, (SmallCourse.OneStation(0) with { Log = [Entry(LogKind.Off)] }).Wet().Advice);
    }

    [Fact]
    public void A_skip_names_the_day_on_which_it_is_wanted_again()
    {
        // Not due before 30 mm: 25 tonight, 30 (not past it) tomorrow, 35 on Wednesday.
        var course = SmallCourse.OneStation(20, SmallCourse.Area with { RunAt = 0.6 });
        Assert.Equal((AdviceKind.Skip, SmallCourse.Monday.AddDays(2)), (course.Advice().Advice, course.Advice().LookAgain!.Value));

        // The mornings themselves, one after another, say the same.
        Assert.Equal(AdviceKind.KeepOff, (course with { Date = SmallCourse.Monday.AddDays(1), DepletionMm = [25], Log = [Entry(LogKind.Off)] }).Advice().Advice);
        Assert.Equal(AdviceKind.Resume, (course with { Date = SmallCourse.Monday.AddDays(2), DepletionMm = [30], Log = [Entry(LogKind.Off)] }).Advice().Advice);
    }

    [Fact]
    public void A_skip_that_nobody_answered_comes_back_as_resume_with_both_possibilities()
    {
        var advice = (Dry() with { Sheets = [Sheet(AdviceKind.Skip, null)] }).Advice();
        Assert.Equal(AdviceKind.Resume, advice.Advice);
        Assert.Equal((Sunday, AdviceKind.Skip), (advice.Unanswered!.Sheet, advice.Unanswered.Kind));
        Assert.Equal(AdviceKind.Resume, advice.Unanswered.IfDone!.Kind);
    }

    [Fact]
    public void A_change_that_nobody_answered_is_asked_for_until_it_is()
    {
        var course = Dry() with { Sheets = [Sheet(AdviceKind.Set, 60)] };
        Assert.Equal(60, course.Advice().Unanswered!.Percent);
        Assert.Equal(100, course.Advice().Present.Percent);

        var answered = course with { Log = [Round()] };
        Assert.Null(answered.Advice().Unanswered);
        Assert.Equal(60, answered.Advice().Present.Percent);

        var notDone = course with { Log = [Round() with { Except = [Program] }] };
        Assert.Null(notDone.Advice().Unanswered);
        Assert.Equal((100d, false), (notDone.Advice().Present.Percent, notDone.Advice().Confirmed));
    }

    [Fact]
    public void A_watering_rule_on_every_start_says_must_not_run_and_a_ceiling_limits_the_number()
    {
        var noMondays = new Restriction { Name = "odd and even", DaysNotAllowed = new WaterDays.Weekdays([DayOfWeek.Monday]) };
        Assert.Equal(AdviceKind.Off, Dry().With(noMondays).Advice);
        var ceiling = Dry().With(new Restriction { Name = "stage 2", MostPercent = 70 });
        Assert.Equal((AdviceKind.Set, 70d), (ceiling.Advice, ceiling.Percent!.Value));
    }

    [Fact]
    public void A_ceiling_below_the_smallest_number_of_the_dial_says_must_not_run()
    {
        var course = Dry() with { Controller = SmallCourse.Box with { PercentMin = 20 } };
        Assert.Equal(AdviceKind.Off, course.With(new Restriction { Name = "stage 3", MostPercent = 15 }).Advice);
        Assert.Equal(20, course.With(new Restriction { Name = "stage 3", MostPercent = 20 }).Percent);
    }

    [Fact]
    public void One_percentage_for_the_box_is_the_largest_of_its_programs()
    {
        // P1's station needs 150 %, P2's 640 %: the dial shows one number, and ends at 300.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Applies = PercentApplies.Controller, PercentMax = 300, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [10, 60],
        };
        var programs = course.Sheet().Programs;
        Assert.All(programs, p => Assert.Equal((AdviceKind.Set, 300d), (p.Advice, p.Percent!.Value)));
    }

    [Fact]
    public void A_box_without_percentage_gets_new_minutes()
    {
        var course = Dry() with { Controller = SmallCourse.Box with { Applies = PercentApplies.None, PercentMax = 700 } };
        Assert.Equal((60d, 384d), (course.Advice().NewMinutes[0].From, course.Advice().NewMinutes[0].To)); // 64 mm at 10 mm an hour
    }

    /// <summary>60 mm missing at dawn, past the allowable 50: Ks 0.8, so 64 tonight and 640 %, cut to the dial's 200; 100 % would leave 54 and more.</summary>
    private static SmallCourse Dry(params LogEntry[] log) => SmallCourse.OneStation(60) with { Log = log };

    private static LogEntry Entry(LogKind kind) => new() { Time = new(Sunday, new(9, 0)), Kind = kind, Where = Program };

    private static LogEntry Round() => new() { Time = new(Sunday, new(12, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = Sunday };

    private static IssuedSheet Sheet(AdviceKind advice, double? percent) => new(
        Sunday, 1, new DateTimeOffset(Sunday.ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(new("C1", "P1"), advice, percent, Asks: true)]);
}

internal static class SmallCourseVariants
{
    /// <summary>5 mm missing tonight, of which 95 may stay empty: nothing is needed.</summary>
    public static Core.Advice.ProgramAdvice Wet(this SmallCourse course) =>
        (course with { Stations = [course.Stations[0] with { Area = SmallCourse.Area with { LeaveEmpty = 0.9 } }] }).Advice();

    public static Core.Advice.ProgramAdvice With(this SmallCourse course, Restriction rule) => (course with { Restrictions = [rule] }).Advice();
}
