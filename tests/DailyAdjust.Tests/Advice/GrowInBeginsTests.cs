using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Tests.Irrigation;
using DailyAdjust.Tests.Reports;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// Up to the begin of a grow-in: who is told to key it in and to have the program on for it. One hour each night at 22:00, 10 mm an hour,
/// 5 mm drawn a day, the round done by 13:00.
/// </summary>
public class GrowInBeginsTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly LogEntry OffSunday = new() { Time = new(Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = Program };

    [Fact]
    public void A_skip_pauses_the_box_no_longer_than_until_its_first_start()
    {
        // Due beyond 25 mm. Without it nothing is wanted before Thursday.
        Assert.Equal((AdviceKind.Skip, 3), (Waits.Advice().Advice, Waits.Advice().PauseDays!.Value));
        var advice = (Waits with { Log = [TuesdayNight] }).Advice();
        Assert.Equal((AdviceKind.Skip, 1, Monday.AddDays(1)), (advice.Advice, advice.PauseDays!.Value, advice.LookAgain!.Value));
    }

    [Theory]
    [InlineData(14, 1, "The box runs by itself again from Tue 5 May for the grow-in that begins at 22:00 tomorrow.")]
    [InlineData(0, null, "Turn on again Tue 5 May for the grow-in that begins at 22:00 tomorrow.")]
    public void The_sheet_says_what_it_is_on_again_for(int most, int? pause, string words)
    {
        var course = Waits with { Log = [TuesdayNight] };
        var sheet = (course with { Controller = course.Controller with { PauseDays = most } }).Sheet();
        Assert.Equal(pause, sheet.Programs[0].PauseDays);
        Assert.Contains(words, string.Join(' ', Rendered.File(ReportFiles.FullText, sheet).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Contains(words, System.Net.WebUtility.HtmlDecode(Rendered.File(ReportFiles.Html, sheet)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pause_of_a_day_that_would_reach_past_its_first_start_is_none()
    {
        // Done by 13:00 on Monday; the first of six starts is at 07:00 on Tuesday.
        var advice = (Waits with { Log = [Order(new(Monday.AddDays(1), new(1, 0)), 6, 4, Monday.AddDays(4))] }).Advice();
        Assert.Equal((AdviceKind.Skip, null, Monday.AddDays(1)), (advice.Advice, advice.PauseDays, advice.LookAgain!.Value));
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(2, 2)]
    public void A_pause_that_is_over_and_a_round_that_is_done_as_it_begins_are_in_time(int day, int pause)
    {
        // Ordered from noon on, of its six starts the first is at 13:00; without it nothing is wanted before Thursday.
        var advice = (Waits with { Log = [Order(new(Monday.AddDays(day), new(12, 0)), 6, 4, Monday.AddDays(4))] }).Advice();
        Assert.Equal((AdviceKind.Skip, pause, Monday.AddDays(day)), (advice.Advice, advice.PauseDays!.Value, advice.LookAgain!.Value));
    }

    [Fact]
    public void Where_nobody_comes_before_somebody_has_to_come_on_its_date_and_else_on_the_last_visit_before()
    {
        DateOnly LookAgain(int begins, params DayOfWeek[] visits) => (Waits with
        {
            Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays(visits) }] },
            Log = [Order(new(Monday.AddDays(begins), new(1, 0)), 6, 4, Monday.AddDays(begins + 3))],
        }).Advice().LookAgain!.Value;
        Assert.Equal(Monday.AddDays(2), LookAgain(2, DayOfWeek.Monday, DayOfWeek.Thursday));
        Assert.Equal(Monday.AddDays(1), LookAgain(2, DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Thursday));
    }

    [Fact]
    public void What_is_off_and_can_wait_is_looked_at_in_time_for_it()
    {
        var advice = (Waits with { Log = [OffSunday, TuesdayNight] }).Advice();
        Assert.Equal((AdviceKind.KeepOff, Monday.AddDays(1)), (advice.Advice, advice.LookAgain!.Value));
        Assert.Contains(advice.Chain, r => r.Code is "grow-in-ahead" && r.Words.ToString() is "It has to be on again for the grow-in that begins at 22:00 tomorrow.");
    }

    [Fact]
    public void The_last_visit_before_it_keys_it_in()
    {
        LogEntry tuesday = Order(new(Monday.AddDays(1), new(1, 0)), 6, 4, Monday.AddDays(4));
        var line = Assert.Single(Keyed(0, tuesday, DayOfWeek.Monday, DayOfWeek.Thursday));
        Assert.Equal((1, 4, 6, 4d, At(Monday.AddDays(1), 7)), (line.Day, line.Days, line.Starts.Count, line.Minutes[0].Minutes, line.Begins!.Value));

        // Somebody comes on Tuesday too, but by 13:00 only: one that begins at 22:00 is keyed in then.
        Assert.NotNull(Assert.Single(Keyed(0, tuesday)).Begins);
        Assert.Empty(Keyed(0, TuesdayNight));
        Assert.Empty(Keyed(0, tuesday with { Time = new(Monday.AddDays(1), new(12, 0)) })); // at 13:00
        Assert.NotEmpty(Keyed(0, tuesday with { Time = new(Monday.AddDays(1), new(10, 0)) })); // at 11:00
        Assert.Null(Assert.Single(Keyed(1, TuesdayNight)).Begins);
        Assert.Empty(Keyed(0, tuesday with { Time = new(Monday.AddDays(4), new(1, 0)), Until = new(Monday.AddDays(7), null) }, DayOfWeek.Monday, DayOfWeek.Thursday));
    }

    [Fact]
    public void Answered_with_yes_that_pause_is_over_when_the_turf_gets_its_water()
    {
        var monday = Waits with { Log = [TuesdayNight] };
        var advice = monday.Advice();
        var line = new IssuedLine(new("C1", "P1"), advice.Advice, advice.Percent, Asks: true, advice.PauseDays);
        LogEntry yes = new() { Time = new(Monday, new(15, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = Monday };
        var wednesday = monday with
        {
            Date = Monday.AddDays(2),
            Weather = [OneZone.Day(3, 5), OneZone.Day(4, 5)],
            Sheets = [new IssuedSheet(Monday, 1, At(Monday, 5), [line])],
            Log = [TuesdayNight, yes],
        };
        Assert.Equal(Monday, wednesday.Weather[0].Date);

        // 10, and 5 drawn on each of two days, and half an hour on Tuesday night.
        Assert.Equal(15, wednesday.Advice().Zones[0].DepletionMm, 9);
        Assert.Equal((AdviceKind.Leave, 100d), (wednesday.Advice().Advice, wednesday.Advice().Present.Percent));
    }

    [Fact]
    public void Whatever_takes_the_programs_place_before_its_own_start_is_named()
    {
        var advice = (SmallCourse.OneStation(30) with { Log = [Begins(15)] }).Advice();
        Assert.Equal((AdviceKind.Leave, At(Monday, 15)), (advice.Advice, advice.NextStart!.Value));
        Assert.Equal("A grow-in begins at 15:00 today: its starts and minutes are keyed by hand, the percentage stays.", advice.Reason.ToString());
        Assert.Equal("grow-in-begins", advice.Chain[0].Code);
        Assert.StartsWith("A grow-in begins at 07:00 tomorrow:", (SmallCourse.OneStation(30) with { Log = [Begins(21)] }).Advice().Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_program_that_is_off_is_turned_on_for_it_beforehand()
    {
        var advice = (SmallCourse.OneStation(30) with { Log = [OffSunday, Begins(15)] }).Advice();
        Assert.Equal((AdviceKind.Resume, 100d), (advice.Advice, advice.Percent!.Value));
        Assert.Equal("A grow-in begins at 15:00 today: its starts and minutes are keyed by hand.", advice.Reason.ToString());

        LogEntry pause = OffSunday with { Kind = LogKind.Pause, Value = 5 * 1440, Unit = LogUnit.Minutes };
        var paused = (SmallCourse.OneStation(30) with { Log = [pause, Begins(15)] }).Advice();
        Assert.Equal(AdviceKind.Resume, paused.Advice);
        Assert.EndsWith("The box is paused until 09:00 Fri 8 May: end the pause.", paused.Reason.ToString(), StringComparison.Ordinal);

        // Once it has begun: who paused the box before did not know of it, who paused it since meant it.
        AdviceKind Tuesday(LogEntry pausing) => (SmallCourse.OneStation(30) with { Date = Monday.AddDays(1), Log = [Begins(15), pausing] }).Advice().Advice;
        Assert.Equal(AdviceKind.Resume, Tuesday(pause));
        Assert.Equal(AdviceKind.KeepOff, Tuesday(pause with { Time = new(Monday, new(16, 0)) }));
    }

    [Fact]
    public void An_order_takes_out_starts_of_one_that_begins_later()
    {
        LogEntry evening = new() { Time = new(Monday, new(0, 0)), Kind = LogKind.NoWater, Where = Program, Until = new(Monday, new(15, 30)) };
        Assert.Equal([15], (SmallCourse.OneStation(30) with { Log = [evening, Begins(15)] }).Advice().TakenOut.Select(t => t.At.Hour));
    }

    private static IReadOnlyList<Core.Morning.GrowInLine> Keyed(int day, LogEntry growIn, params DayOfWeek[] visits) => (SmallCourse.OneStation(30) with
    {
        Date = Monday.AddDays(day),
        Controller = SmallCourse.Box with { Programs = [visits.Length == 0 ? SmallCourse.EveryNight("P1", "22:00") : SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays(visits) }] },
        Log = [growIn],
    }).Sheet().Exceptions.GrowIns;

    private static SmallCourse Waits
    {
        get
        {
            var course = SmallCourse.OneStation(10, SmallCourse.Area with { RunAt = 0.5 });
            return course with { Controller = course.Controller with { PauseDays = 14 } };
        }
    }

    /// <summary>30 min in its own start of Tuesday night, 45 of Wednesday's.</summary>
    private static LogEntry TuesdayNight => Order(new(Monday.AddDays(1), new(1, 0)), 1, 30, Monday.AddDays(2));

    /// <summary>6 starts of 4 min from 07:00 to 17:00, on Monday from some hour on.</summary>
    private static LogEntry Begins(int hour) => Order(new(Monday, new(hour, 0)), 6, 4, Monday.AddDays(4));

    private static LogEntry Order(LogTime begin, int starts, double minutes, DateOnly last) => new()
    {
        Time = begin,
        Kind = LogKind.GrowIn,
        Where = Program,
        Times = starts,
        Value = minutes,
        Unit = LogUnit.Minutes,
        Until = new(last, null),
    };

    private static DateTimeOffset At(DateOnly date, int hour) => new(date.ToDateTime(new(hour, 0)), TimeSpan.Zero);
}
