using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>A box that is visited on Mondays and Thursdays, and visits that are moved or added by hand. The round is done by 13:00.</summary>
public class MovedVisitTests
{
    private static readonly Place Box = new(PlaceKind.Controller, "C1", "");
    private static readonly DateOnly Monday = SmallCourse.Monday;

    [Fact]
    public void The_next_visit_moves_to_its_date_and_the_one_after_stays() =>
        Assert.Equal("Mon Wed Mon Thu", Visits(Move(1, 8, to: 2)));

    [Fact]
    public void A_visit_may_move_past_the_next_ones() => Assert.Equal("Mon Sat Mon Thu", Visits(Move(1, 8, to: 5)));

    [Fact]
    public void What_was_moved_moves_again()
    {
        Assert.Equal("Mon Sat Mon Thu", Visits(Move(1, 8, to: 2), Move(1, 9, to: 5)));
        Assert.Equal("Mon Wed Mon Thu", Visits(Move(1, 8, to: 5), Move(1, 9, to: 2)));
    }

    [Fact]
    public void Today_s_own_moves_while_its_round_is_not_to_be_done_yet()
    {
        Assert.Equal("Tue Thu Mon Thu", Visits(Move(0, 12, to: 1)));
        Assert.Equal("Mon Tue Mon Thu", Visits(Move(0, 13, to: 1))); // Thursday's came earlier
    }

    [Fact]
    public void Without_a_date_somebody_is_there_on_that_day_too() =>
        Assert.Equal("Mon Wed Thu Mon Thu", Visits(new LogEntry { Time = new(Monday.AddDays(2), new(8, 0)), Kind = LogKind.Visit, Where = Box }));

    [Fact]
    public void Of_another_box_nothing_is_moved() =>
        Assert.Equal("Mon Thu Mon Thu", Visits(Move(1, 8, to: 2) with { Where = new(PlaceKind.Controller, "C2", "") }));

    [Fact]
    public void The_next_one_after_a_date_and_those_before_it()
    {
        var (calendar, program) = Calendar(Move(1, 8, to: 2));
        Assert.Equal([2, 2, 7, 7], new[] { 0, 1, 2, 3 }.Select(day => calendar.NextAfter(program, Monday.AddDays(day)).DayNumber - Monday.DayNumber));
        Assert.Equal([7, 2, 0], calendar.Back(program, Monday.AddDays(9), Monday).Select(d => d.DayNumber - Monday.DayNumber));
    }

    private static LogEntry Move(int day, int hour, int to) =>
        new() { Time = new(Monday.AddDays(day), new(hour, 0)), Kind = LogKind.Visit, Where = Box, Until = new(Monday.AddDays(to), null) };

    /// <summary>Of the first eleven days.</summary>
    private static string Visits(params LogEntry[] entries)
    {
        var (calendar, program) = Calendar(entries);
        return string.Join(' ', Enumerable.Range(0, 11).Select(day => Monday.AddDays(day)).Where(d => calendar.IsVisit(program, d)).Select(d => d.DayOfWeek.ToString()[..3]));
    }

    private static (VisitCalendar Calendar, PlannedProgram Program) Calendar(params LogEntry[] entries)
    {
        var course = SmallCourse.OneStation(0);
        var box = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Monday, DayOfWeek.Thursday]) }] };
        var site = (course with { Controller = box }).Site;
        return (new VisitCalendar(site, entries), ZonePlan.AllPrograms(site)[0]);
    }
}
