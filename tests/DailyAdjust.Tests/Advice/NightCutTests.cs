using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;
using static DailyAdjust.Tests.Advice.NightCourses;

namespace DailyAdjust.Tests.Advice;

/// <summary>Numbers that the night or the pump does not give.</summary>
public class NightCutTests
{
    [Fact]
    public void A_run_that_would_outlast_the_window_is_cut_to_what_fits_and_its_shortfall_told()
    {
        // Closes at 22:50: 50 of 60 minutes are 83 %, on the dial 80. 2 of 10 mm, 12 of 60 minutes are missing.
        var course = SmallCourse.OneStation(5) with { Window = new(new(20, 0), new(22, 50)) };
        var sheet = course.Sheet();
        var advice = sheet.Programs[0];
        Assert.Equal((AdviceKind.Set, 80d, 2d, 12d), (advice.Advice, advice.Percent!.Value, Math.Round(advice.Shortfall!.DepthMm, 9), Math.Round(advice.Shortfall.Minutes, 9)));
        Assert.Empty(sheet.Fit.Window);
        Assert.Equal((100d, 80d, new TimeOnly(21, 45)), (sheet.Fit.Cuts[0].FromPercent, sheet.Fit.Cuts[0].ToPercent, sheet.Fit.Cuts[0].StartThatFits!.Value));
        Assert.Equal("Cut from 100 %, because the watering window closes at 22:50 today; 2.0 mm or 12 min short a start. With a first start at 21:45 the whole would fit.", advice.Reason.ToString());
    }

    [Fact]
    public void What_the_dial_could_not_give_anyway_is_missing_too()
    {
        // 20 + 5 mm are missing, 250 %; the dial, which stands at 20, ends at 150, and 30 of its 90 minutes fit: 5 mm are given.
        var course = SmallCourse.OneStation(20, SmallCourse.Area with { AllowableDepletion = 0.2 }) with
        {
            Window = new(new(20, 0), new(22, 30)),
            Controller = SmallCourse.Box with { PercentMax = 150 },
            Log = [new LogEntry { Time = new(SmallCourse.Monday, new(1, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", "P1"), Value = 20, Unit = LogUnit.Percent }],
        };
        var sheet = course.Sheet();
        Assert.Equal((150d, 50d), (sheet.Fit.Cuts[0].FromPercent, sheet.Fit.Cuts[0].ToPercent));
        Assert.Equal((20d, 120d), (Math.Round(sheet.Fit.Cuts[0].Short!.DepthMm, 9), Math.Round(sheet.Fit.Cuts[0].Short!.Minutes, 9)));
    }

    [Fact]
    public void What_no_number_mends_keeps_nobody_from_being_cut_for_the_rest()
    {
        // P1 and P2 both begin at 22:00 and no number helps that; P2 is on until 23:00, and P3, which begins at 22:45, needs the pump too.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00"), SmallCourse.EveryNight("P3", "22:45")] },
            Stations =
            [
                SmallCourse.Station(1, area: Greens, minutes: 30, programs: "P1") with { FlowLPerMin = 100 },
                SmallCourse.Station(2, area: Rough, programs: "P2") with { FlowLPerMin = 100 },
                SmallCourse.Station(3, area: Greens, programs: "P3") with { FlowLPerMin = 100 },
            ],
            DepletionMm = [0, 5, 5],
            Pump = 150,
            Priority = ["greens", "rough"],
        };
        var sheet = course.Sheet();
        Assert.Equal(("P2", 100d, 75d), (Assert.Single(sheet.Fit.Cuts).Program.Program, sheet.Fit.Cuts[0].FromPercent, sheet.Fit.Cuts[0].ToPercent));
        Assert.Equal(new DateTimeOffset(2026, 5, 4, 22, 30, 0, TimeSpan.Zero), Assert.Single(sheet.Fit.Pump).To);
    }

    [Fact]
    public void The_pump_and_the_window_are_both_named_where_a_larger_number_runs_into_both()
    {
        // 22:00 to 23:00 beside a run that begins at 22:30, and the window closes at 22:30.
        var sheet = (Two("22:00", "22:30", ["rough", "greens"], pump: 150) with { Window = new(new(20, 0), new(22, 30)) }).Sheet();
        Assert.StartsWith(
            "Cut from 100 %, because the watering window closes at 22:30 today and the pump gives no more from 22:30 today", sheet.Programs.Single(p => p.Key.Program is "P1").Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_to_what_an_unanswered_sheet_asked_for_is_asked_for_again()
    {
        // Whether yesterday's 80 is on the dial, nobody said: by the logbook it is at 100.
        var asked = new IssuedSheet(
            SmallCourse.Monday.AddDays(-1), 1, new(SmallCourse.Monday.AddDays(-1).ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(new("C1", "P1"), AdviceKind.Set, 80, Asks: true)]);
        var advice = (SmallCourse.OneStation(5) with { Window = new(new(20, 0), new(22, 50)), Sheets = [asked] }).Advice();
        Assert.NotNull(advice.Unanswered);
        Assert.Equal((AdviceKind.Set, 80d), (advice.Advice, advice.Percent!.Value));
        Assert.StartsWith("Cut from", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_to_what_is_on_the_dial_asks_for_no_walk()
    {
        var set = new LogEntry { Time = new(SmallCourse.Monday, new(1, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", "P1"), Value = 80, Unit = LogUnit.Percent };
        var advice = (SmallCourse.OneStation(5, SmallCourse.Area with { AllowableDepletion = 0.06 }) with { Window = new(new(20, 0), new(22, 50)), Log = [set] }).Advice();
        Assert.Equal((AdviceKind.Leave, 80d, false), (advice.Advice, advice.Percent!.Value, advice.NeedsVisit));
        Assert.StartsWith("Cut from 100 %", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void The_start_it_proposes_fits()
    {
        var course = SmallCourse.OneStation(5) with { Window = new(new(20, 0), new(22, 50)) };
        var moved = course with { Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "21:45")] } };
        Assert.Empty(moved.Sheet().Fit.Cuts);
        Assert.Equal(AdviceKind.Leave, moved.Advice().Advice);
    }

    [Fact]
    public void The_pump_is_spared_by_ending_one_before_the_other_begins()
    {
        // The second cannot begin later by being shorter; neither is named before the other: the first is cut, and a start is proposed.
        var sheet = Two("22:00", "22:30", ["greens", "rough"], pump: 150, secondGround: Greens).Sheet();
        var cut = Assert.Single(sheet.Fit.Cuts);
        Assert.Equal(("P1", 50d, new TimeOnly(21, 30)), (cut.Program.Program, cut.ToPercent, cut.StartThatFits!.Value));
        Assert.Empty(sheet.Fit.Pump);
    }

    [Fact]
    public void A_raise_ends_where_the_next_start_begins()
    {
        // Set at 50 %, the greens end at 22:30, when the rough begins: the raise to 100 % is what does not fit.
        var thirsty = Greens with { AllowableDepletion = 0.06 };
        var course = Two("22:00", "22:30", ["greens", "rough"], pump: 150) with { Log = [Set("P1", 50)] };
        course = course with { Stations = [course.Stations[0] with { Area = thirsty }, course.Stations[1]] };
        var sheet = course.Sheet();
        Assert.Equal(("P1", 100d, 50d), (Assert.Single(sheet.Fit.Cuts).Program.Program, sheet.Fit.Cuts[0].FromPercent, sheet.Fit.Cuts[0].ToPercent));
        Assert.Equal((AdviceKind.Leave, 100d), (sheet.Programs[1].Advice, sheet.Programs[1].Percent!.Value));
    }

    [Theory]
    [InlineData(150)] // the two that start at one minute ask 200 as long as both are on
    [InlineData(90)] // each alone asks more
    public void Nothing_is_cut_for_what_no_number_mends(double pump)
    {
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00"), SmallCourse.EveryNight("P3", "22:15")] },
            Stations =
            [
                SmallCourse.Station(1, area: Greens, programs: "P1") with { FlowLPerMin = 100 },
                SmallCourse.Station(2, area: Greens, programs: "P2") with { FlowLPerMin = 100 },
                SmallCourse.Station(3, area: Rough, minutes: 30, programs: "P3") with { FlowLPerMin = 100 },
            ],
            DepletionMm = [5, 5, 0],
            Pump = pump,
            Priority = ["greens", "rough"],
        };
        var sheet = course.Sheet();
        Assert.Empty(sheet.Fit.Cuts);
        Assert.Equal(new DateTimeOffset(2026, 5, 4, 23, 0, 0, TimeSpan.Zero), Assert.Single(sheet.Fit.Pump).To);
    }

    [Fact]
    public void The_starts_of_two_cuts_hold_together()
    {
        // Each of the first two would fit at a start of its own; both at once only where the second goes out of the first one's way.
        var sheet = Three("22:00", "22:00").Sheet();
        Assert.Equal(["P1", "P2"], sheet.Fit.Cuts.Select(c => c.Program.Program));
        var starts = sheet.Fit.Cuts.Select(c => c.StartThatFits!.Value.ToString("HH:mm", null)).ToList();
        var moved = Three(starts[0], starts[1]).Sheet();
        Assert.Empty(moved.Fit.Cuts);
        Assert.Empty(moved.Fit.Pump);
    }

    [Fact]
    public void A_pump_reduced_in_the_logbook_cuts_too()
    {
        var course = Two("22:00", "22:30", ["greens", "rough"], pump: 250) with
        {
            Log =
            [
                new LogEntry
                {
                    Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)),
                    Kind = LogKind.Pump,
                    Where = new(PlaceKind.Pump, "", ""),
                    Value = 150,
                    Unit = LogUnit.LitresPerMin,
                    Until = new(SmallCourse.Monday.AddDays(3), null),
                },
            ],
        };
        Assert.Single(course.Sheet().Fit.Cuts);
        Assert.Empty((course with { Log = [] }).Sheet().Fit.Cuts);
    }

    [Theory]
    [InlineData(50, 0)]
    [InlineData(59, 30)] // half a minute is too late too
    public void Nobody_at_the_box_means_nothing_is_cut_but_it_is_flagged(int minute, int second)
    {
        var course = SmallCourse.OneStation(5) with
        {
            Window = new(new(20, 0), new(22, minute, second)),
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Tuesday]) }] },
        };
        Assert.Empty(course.Sheet().Fit.Cuts);
        Assert.Single(course.Sheet().Fit.Window);
    }
}
