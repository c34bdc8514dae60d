using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Between visits. 10 mm a night at 100 % and 5 mm drawn a day, 50 mm allowed; Monday is no visit day, Thursday is.</summary>
public class VisitWorthTests
{
    private static readonly Controller Thursdays = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Thursday]) }] };

    [Fact]
    public void Not_going_to_a_wet_program_wastes_what_drains_until_the_next_visit()
    {
        // Full at dawn: 5, then 5 each night are missing, and 10 are given: 5 drain on each of three nights.
        var worth = Assert.Single(Sheet(0).IfVisited);
        Assert.Equal((new ProgramKey("C1", "P1"), SmallCourse.Monday.AddDays(3), AdviceKind.Set, 50d), (worth.Program, worth.NextVisit, worth.Advice, worth.Percent!.Value));
        Assert.Equal((15d, 1500d, 0), (Math.Round(worth.WastedMm, 9), Math.Round(worth.WastedL!.Value, 6), worth.ZonesBeyond));
        Assert.True(worth.IsAlert); // 15 of 50 mm, and a quarter may pass
    }

    [Fact]
    public void Not_going_to_a_dry_program_costs_days_beyond_the_allowable()
    {
        var off = new LogEntry { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") };
        var worth = Assert.Single(Sheet(42, off).IfVisited);
        Assert.Equal((AdviceKind.Resume, 1), (worth.Advice, worth.ZonesBeyond));
        Assert.InRange(worth.DaysBeyond, 1, 3);
        Assert.True(worth.BeyondMm > 0, $"{worth.BeyondMm} mm");
    }

    [Fact]
    public void Where_nothing_would_change_nothing_is_said() => Assert.Empty(Sheet(20).IfVisited);

    [Fact]
    public void On_a_later_look_it_counts_what_was_measured_of_the_day_and_what_is_still_expected_of_it()
    {
        // Full at dawn; 4 mm measured by noon, and 20 mm of rain then. Only what is drawn after it is missing at 22:00 when 10 are given; tomorrow somebody comes.
        DateTimeOffset noon = new(SmallCourse.Monday.ToDateTime(new(11, 57)), TimeSpan.Zero);
        var tuesdays = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Tuesday]) }] };
        var sheet = (SmallCourse.OneStation(0) with { Controller = tuesdays, At = new(12, 30), EtoSoFar = new(4, noon, "yard", false), RainSinceMidnight = [new(noon, 20)] }).Sheet();
        Assert.InRange(sheet.SecondLook!.RestMm!.Value, 2.45, 2.55);
        Assert.Equal(10 - sheet.SecondLook.RestMm.Value, Assert.Single(sheet.IfVisited).WastedMm, 6);
    }

    [Fact]
    public void A_visit_nobody_planned_makes_it_a_visit_day()
    {
        var visit = new LogEntry { Time = new(SmallCourse.Monday, new(4, 30)), Kind = LogKind.Visit, Where = new(PlaceKind.Controller, "C1", "") };
        var sheet = Sheet(0, visit);
        Assert.Empty(sheet.IfVisited);
        Assert.Equal((AdviceKind.Set, 50d), (sheet.Programs[0].Advice, sheet.Programs[0].Percent!.Value));
        Assert.Equal(AdviceKind.Leave, Sheet(0).Programs[0].Advice);
    }

    private static Core.Morning.MorningSheet Sheet(double depletionMm, params LogEntry[] log) =>
        (SmallCourse.OneStation(depletionMm) with { Controller = Thursdays, Log = log }).Sheet();
}
