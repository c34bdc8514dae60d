using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;
using static DailyAdjust.Tests.Advice.NightCourses;

namespace DailyAdjust.Tests.Advice;

/// <summary>Whose number is cut where the night or the pump does not give all of them.</summary>
public class CutOrderTests
{
    [Fact]
    public void On_a_shared_dial_the_next_number_of_what_runs_is_what_is_asked_about()
    {
        // P1 runs from 22:00 for at most an hour, P2 of its dial must not run. From 22:30 to 22:45 the greens of another box have the pump, and the window closes behind them:
        // 55 %, 33 minutes, run into the pump alone; all that is asked would outlast the window too.
        var course = Two("22:00", "23:30", ["greens", "rough"], closes: "22:45", pump: 150) with { Log = [Off("P2") with { Kind = LogKind.Hold }] };
        var other = SmallCourse.Box with { Id = "C2", Route = 2, Programs = [SmallCourse.EveryNight("P1", "22:30")] };
        var dial = course.Controller with { Applies = PercentApplies.Controller };
        var sheet = (course with
        {
            Stations =
            [
                course.Stations[0] with { Area = Rough }, course.Stations[1],
                SmallCourse.Station(1, area: Greens, minutes: 15) with { Key = new("C2", "1"), Rate = new(20), FlowLPerMin = 100 },
            ],
            DepletionMm = [5, 0, 0],
            Described = site => site with { Controllers = [dial, other] },
        }).Sheet();
        Assert.Equal((new ProgramKey("C1", "P1"), 50d), (Assert.Single(sheet.Fit.Cuts).Program, sheet.Fit.Cuts[0].ToPercent));
        Assert.StartsWith("Cut from 100 %, because the pump gives no more from 22:30 today;", sheet.Programs.Single(p => p.Key == new ProgramKey("C1", "P1")).Reason.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, 100, AdviceKind.KeepOff)]
    [InlineData(false, 50, AdviceKind.Resume)] // named nowhere before it: each gets the smallest number first
    public void Ground_named_last_that_is_off_keeps_none_named_before_from_a_larger_number(bool greensFirst, double percent, AdviceKind second)
    {
        // 22:00, an hour at 100 %, set at 50, and 22:30; one at a time. 5 + 5 mm are missing, of which 6 may be.
        var tight = Greens with { AllowableDepletion = 0.06 };
        var course = Two("22:00", "22:30", greensFirst ? ["greens", "rough"] : [], pump: 150);
        var sheet = (course with
        {
            Stations = [course.Stations[0] with { Area = tight }, course.Stations[1] with { Area = greensFirst ? Rough : tight }],
            DepletionMm = [5, 45],
            Log = [Set("P1", 50), Off("P2")],
        }).Sheet();
        Assert.Equal((percent, second), (sheet.Programs[0].Percent!.Value, sheet.Programs[1].Advice));
    }

    [Fact]
    public void What_is_turned_on_is_turned_on_at_what_fits()
    {
        // 45 + 5 mm are missing; 50 of its minutes fit, on the dial 80 %.
        var advice = (SmallCourse.OneStation(45) with { Window = new(new(20, 0), new(22, 50)), Log = [Off("P1")] }).Advice();
        Assert.Equal((AdviceKind.Resume, 80d, true), (advice.Advice, advice.Percent!.Value, advice.NeedsVisit));
    }

    [Theory]
    [InlineData(true, "P2")]
    [InlineData(false, "P1")]
    public void Ground_named_last_is_cut_first(bool greensFirst, string cut)
    {
        // 22:00 to 23:00 and 22:30 to 23:30, each 100 L/min of 150, and the window closes at 22:50: each alone would have to be cut for the window.
        var sheet = Two("22:00", "22:00", greensFirst ? ["greens", "rough"] : ["rough", "greens"], closes: "23:30", stack: true).Sheet();
        Assert.Equal(cut, Assert.Single(sheet.Fit.Cuts).Program.Program);
        Assert.Empty(sheet.Fit.Window);
    }

    [Fact]
    public void Ground_named_last_gives_what_it_can_where_its_start_is_in_the_way()
    {
        // The rough begins while the greens are on, and no number moves a start: at its smallest 15 of 30 minutes are left, and the greens run in whole.
        var sheet = Two("22:00", "22:30", ["greens", "rough"], pump: 150).Sheet();
        var cut = Assert.Single(sheet.Fit.Cuts);
        Assert.Equal(("P2", 25d, new TimeOnly(23, 0)), (cut.Program.Program, cut.ToPercent, cut.StartThatFits!.Value));
        Assert.Equal(TimeSpan.FromMinutes(15), Assert.Single(sheet.Fit.Pump).To - sheet.Fit.Pump[0].From);
        Assert.StartsWith("Cut from 100 %, because the pump gives no more from 22:30 today", sheet.Programs.Single(p => p.Key.Program is "P2").Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Ground_named_last_stays_off_where_turning_it_on_would_disturb_what_goes_before()
    {
        var course = Two("22:00", "22:30", ["greens", "rough"], pump: 150) with
        {
            Log = [new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P2") }],
            DepletionMm = [5, 45],
        };
        var sheet = course.Sheet();
        Assert.Equal([AdviceKind.Leave, AdviceKind.KeepOff], sheet.Programs.Select(p => p.Advice));
        var cut = Assert.Single(sheet.Fit.Cuts);
        Assert.Equal(("P2", 0d, new TimeOnly(23, 0)), (cut.Program.Program, cut.ToPercent, cut.StartThatFits!.Value));
        Assert.True(cut.FromPercent > 0);
        Assert.True(cut.Short!.Minutes > 0);
        Assert.Empty(sheet.Fit.Pump);
        Assert.StartsWith("Stays off", sheet.Programs[1].Reason.ToString(), StringComparison.Ordinal);
        Assert.Equal(AdviceKind.Resume, (course with { Pump = 250 }).Sheet().Programs[1].Advice);
    }

    [Fact]
    public void What_is_too_much_already_is_not_made_more_by_ground_that_a_smaller_number_takes_out_of_it()
    {
        // The greens ask 200 of 150 from 22:00 on, which no number mends; the rough can be over by then.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00"), SmallCourse.EveryNight("P3", "21:30")] },
            Stations =
            [
                SmallCourse.Station(1, area: Greens, programs: "P1") with { FlowLPerMin = 100 },
                SmallCourse.Station(2, area: Greens, programs: "P2") with { FlowLPerMin = 100 },
                SmallCourse.Station(3, area: Rough, programs: "P3") with { FlowLPerMin = 100 },
            ],
            DepletionMm = [5, 5, 5],
            Pump = 150,
            Priority = ["greens", "rough"],
        };
        var sheet = course.Sheet();
        Assert.Equal(("P3", 50d), (Assert.Single(sheet.Fit.Cuts).Program.Program, sheet.Fit.Cuts[0].ToPercent));
        Assert.Equal(200, Assert.Single(sheet.Fit.Pump).FlowLPerMin);
    }

    [Fact]
    public void One_dial_for_the_box_is_cut_as_one()
    {
        var course = Two("22:00", "22:00", ["greens", "rough"], closes: "23:30", stack: true);
        var sheet = (course with { Controller = course.Controller with { Applies = PercentApplies.Controller } }).Sheet();
        Assert.Equal([75d, 75d], sheet.Programs.Select(p => p.Percent!.Value));
    }
}
