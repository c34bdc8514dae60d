using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// Whatever speaks of starts speaks of a grow-in's while one is in force: 6 starts of 4 min from 07:00 to 17:00, ordered on Monday 04:00, in the
/// place of an hour at 22:00. The round is done by 13:00.
/// </summary>
public class GrowInStartsTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly DateOnly Tuesday = Monday.AddDays(1);
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");

    [Fact]
    public void The_next_start_and_its_end()
    {
        var advice = Course.Advice();
        Assert.Equal((At(Monday, 13), At(Monday, 13).AddMinutes(4)), (advice.NextStart!.Value, advice.Finishes!.Value));
        LogEntry half = new() { Time = new(Monday, new(3, 0)), Kind = LogKind.Setting, Where = Program, Value = 50, Unit = LogUnit.Percent };
        Assert.Equal(At(Monday, 13).AddMinutes(2), (Course with { Log = [half, .. Course.Log] }).Advice().Finishes);
    }

    [Fact]
    public void The_fit_of_the_night()
    {
        var runs = Course.Sheet().Fit.Runs;
        Assert.Equal([At(Monday, 13), At(Monday, 15), At(Monday, 17), At(Tuesday, 7), At(Tuesday, 9), At(Tuesday, 11)], runs.Select(r => r.Begins));
        Assert.All(runs, r => Assert.Equal(4, (r.Finishes - r.Begins).TotalMinutes));

        var window = Course with { Window = new WateringWindow(new(21, 0), new(6, 0)) };
        var fit = window.Sheet().Fit;
        Assert.Equal([At(Monday, 13).AddMinutes(4), At(Monday, 15).AddMinutes(4), At(Monday, 17).AddMinutes(4)], fit.Window.Take(3).Select(w => w.Finishes));

        // It was ordered by day: nothing is wrong with that, and no other start is looked for.
        Assert.All(fit.Window, w => Assert.True(w.IsGrowIn));
        Assert.Equal((true, 0, 0), (fit.IsClean, fit.Moves.Count, fit.NoStartFits.Count));
    }

    [Fact]
    public void The_number_at_which_its_run_ends_before_another_begins()
    {
        // 20 minutes from 13:00, another program at 13:10: half of them, though a start of the program's own lasts an hour.
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "13:10")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [5, 5],
            Log = [GrowIn with { Value = 20 }],
        };
        var found = Assert.Single(course.Sheet().Fit.Overlaps);
        Assert.Equal(("P1", "P2", 10d, 50d), (found.First, found.Second, found.Minutes, found.LargestPercent));
    }

    [Fact]
    public void Which_of_two_programs_of_one_station_is_judged_first()
    {
        // 20 and 5 mm missing by 22:00, less 6 starts of 4 min. The grow-in's program is judged first, by its start at 13:00: where that must not run, its last three starts are left to the other.
        LogEntry hold = new() { Time = new(Monday, new(4, 30)), Kind = LogKind.Hold, Where = new(PlaceKind.Program, "C1", "P2"), Until = new(Monday.AddDays(2), null) };
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "23:00")] },
            Stations = [SmallCourse.Station(1, programs: ["P1", "P2"])],
            DepletionMm = [20],
            Log = [GrowIn with { Where = hold.Where }],
        };
        Assert.Equal(210, course.Advice().ExactPercent!.Value, 3);
        Assert.Equal(230, (course with { Log = [.. course.Log, hold] }).Advice().ExactPercent!.Value, 3);
    }

    [Fact]
    public void Did_it_run()
    {
        var due = (Course with { Date = Tuesday }).Sheet().DueRuns;
        Assert.Equal([7, 9, 11, 13, 15, 17], due.Select(d => d.Start.Hour));
        Assert.All(due, d => Assert.Equal(4, (d.Finishes - d.Start).TotalMinutes));
    }

    [Fact]
    public void A_program_that_was_off_when_it_was_ordered_was_not_due_to_run_before_somebody_turned_it_on_nor_one_that_was_stopped_since()
    {
        LogEntry off = new() { Time = new(Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = Program };
        Assert.Empty((Course with { Date = Tuesday, Log = [off, .. Course.Log] }).Sheet().DueRuns);
        Assert.Equal(4, (Course with { Date = Tuesday, Log = [.. Course.Log, off with { Time = new(Monday, new(14, 0)) }] }).Sheet().DueRuns.Count);
    }

    [Fact]
    public void What_was_missed_waits_for_its_next_start()
    {
        // 47 mm of 50 allowed: enough until Tuesday 07:00, not until 22:00.
        LogEntry missed = new() { Time = new(Tuesday, new(4, 30)), Kind = LogKind.Ran, Where = Program, Value = 0, Unit = LogUnit.Percent };
        var plan = (Course with { Date = Tuesday, DepletionMm = [47], Log = [.. Course.Log, missed] }).Sheet().RunByHand!;
        Assert.Equal(("1", 0), (Assert.Single(plan.CanWait).Station, plan.Groups.Count));
    }

    [Fact]
    public void Starts_that_a_rain_switch_keeps_shut()
    {
        var course = Course with
        {
            Date = Tuesday,
            Controller = SmallCourse.Box with { RainSwitch = new RainSwitch(5, TimeSpan.FromDays(3)) },
            Weather = [OneZone.Day(3, 5, 10)],
        };
        Assert.Equal(Monday, course.Weather[0].Date);
        Assert.Equal([7, 9, 11, 13, 15, 17], Assert.Single(course.Sheet().Exceptions.Shut).Starts.Select(s => s.At.Hour));
    }

    [Fact]
    public void A_box_on_standard_time_has_its_late_start_on_the_sites_next_date()
    {
        // 22:00 and 23:30 on the box, 23:00 and 00:30 on the site's clock; 10 mm an hour.
        var box = OneZone.Box with { ClockStaysStandard = true, Programs = [SmallCourse.EveryNight("P1", "22:00", "23:30")] };
        var site = OneZone.Site(OneZone.Area, controller: box) with { Clock = new(TimeZoneInfo.FindSystemTimeZoneById("America/New_York")) };
        LogEntry growIn = GrowIn with { Time = new(OneZone.First, new(1, 0)), Times = 2, Value = 6, Until = new(OneZone.First.AddDays(30), null) };
        var days = OneZone.Run(site, [OneZone.Day(0, 0), OneZone.Day(1, 0)], 40, [growIn]);
        Assert.Equal(1, days[0].IrrigationMm, 9); // one start of 6 min
        Assert.InRange(days[1].IrrigationMm, 2, 2.5); // the late one of the day before, and the early one of its own
    }

    private static LogEntry GrowIn => new()
    {
        Time = new(Monday, new(4, 0)),
        Kind = LogKind.GrowIn,
        Where = Program,
        Times = 6,
        Value = 4,
        Unit = LogUnit.Minutes,
        Until = new(Monday.AddDays(3), null),
    };

    private static SmallCourse Course => SmallCourse.OneStation(30) with { Log = [GrowIn] };

    private static DateTimeOffset At(DateOnly date, int hour) => new(date.ToDateTime(new(hour, 0)), TimeSpan.Zero);
}
