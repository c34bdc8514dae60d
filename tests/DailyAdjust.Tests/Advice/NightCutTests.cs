using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Numbers that the night or the pump does not give. Ground that needs exactly what is set: an hour at 100 %, 10 mm.</summary>
public class NightCutTests
{
    private static readonly Area Greens = SmallCourse.Area with { Name = "greens" };
    private static readonly Area Rough = SmallCourse.Area with { Name = "rough" };

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
        Assert.Contains("21:45", advice.Reason.ToString(), StringComparison.Ordinal);
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
    public void The_pump_is_spared_by_ending_one_before_the_other_begins()
    {
        // The second cannot begin later by being shorter: the first is cut though it is the greens, and a start is proposed.
        var sheet = Two("22:00", "22:30", ["greens", "rough"], pump: 150).Sheet();
        var cut = Assert.Single(sheet.Fit.Cuts);
        Assert.Equal(("P1", 50d, new TimeOnly(21, 30)), (cut.Program.Program, cut.ToPercent, cut.StartThatFits!.Value));
        Assert.Empty(sheet.Fit.Pump);
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

    [Fact]
    public void Nobody_at_the_box_means_nothing_is_cut_but_it_is_flagged()
    {
        var course = SmallCourse.OneStation(5) with
        {
            Window = new(new(20, 0), new(22, 50)),
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Tuesday]) }] },
        };
        Assert.Empty(course.Sheet().Fit.Cuts);
        Assert.Single(course.Sheet().Fit.Window);
    }

    [Fact]
    public void One_dial_for_the_box_is_cut_as_one()
    {
        var course = Two("22:00", "22:00", ["greens", "rough"], closes: "23:30", stack: true);
        var sheet = (course with { Controller = course.Controller with { Applies = PercentApplies.Controller } }).Sheet();
        Assert.Equal([75d, 75d], sheet.Programs.Select(p => p.Percent!.Value));
    }

    private static SmallCourse Two(string first, string second, IReadOnlyList<string> priority, string closes = "06:00", double? pump = null, bool stack = false) => new()
    {
        Controller = SmallCourse.Box with
        {
            Overlap = stack ? ProgramOverlap.Stack : ProgramOverlap.Together,
            Programs = [SmallCourse.EveryNight("P1", first), SmallCourse.EveryNight("P2", second)],
        },
        Stations = [SmallCourse.Station(1, area: Greens, programs: "P1") with { FlowLPerMin = 100 }, SmallCourse.Station(2, area: Rough, programs: "P2") with { FlowLPerMin = 100 }],
        DepletionMm = [5, 5],
        Priority = priority,
        Pump = pump,
        Window = new(new(20, 0), TimeOnly.ParseExact(closes, "HH:mm", null)),
    };
}
