using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Boxes that pause by themselves.</summary>
public class PauseTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly ProgramKey Key = new("C1", "P1");
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly DateOnly Sunday = Monday.AddDays(-1);

    [Theory]
    [InlineData(7, 2)] // wanted again on Wednesday (see DecisionOrderTests)
    [InlineData(1, 1)] // as long as the box can
    [InlineData(0, null)]
    public void A_skip_says_for_how_many_days(int most, int? days) =>
        Assert.Equal((AdviceKind.Skip, days), (NotDue(most).Advice().Advice, NotDue(most).Advice().PauseDays));

    [Fact]
    public void A_round_done_pauses_it_and_the_old_setting_returns_by_itself()
    {
        var sheet = new IssuedSheet(Monday, 1, At(Monday, 5), [new IssuedLine(Key, AdviceKind.Skip, null, Asks: true, PauseDays: 2)]);
        var history = History([Setting(60), new() { Time = new(Monday, new(15, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = Monday }], sheet);
        Assert.Equal((60d, null), (history.At(Key, At(Monday, 12)).Setting.Percent, history.At(Key, At(Monday, 12)).PausedUntil));
        Assert.Equal((0d, At(Monday.AddDays(2), 13)), (history.At(Key, At(Monday, 13)).Setting.Percent, history.At(Key, At(Monday, 13)).PausedUntil!.Value));
        Assert.Equal(60d, history.At(Key, At(Monday.AddDays(2), 13)).Setting.Percent);
        Assert.True(history.At(Key, At(Monday.AddDays(2), 13)).Confirmed);
    }

    [Fact]
    public void A_setting_ends_a_pause_and_a_later_pause_takes_its_place()
    {
        var ended = History([Setting(60), Pause(9, 3), Setting(80) with { Time = new(Sunday, new(12, 0)) }]);
        Assert.Equal(80d, ended.At(Key, At(Monday, 0)).Setting.Percent);

        var shorter = History([Setting(60), Pause(9, 5), Pause(10, 1)]);
        Assert.True(shorter.At(Key, At(Monday, 9)).Setting.IsOff);
        Assert.Equal(60d, shorter.At(Key, At(Monday, 10)).Setting.Percent);
    }

    [Theory]
    [InlineData(0, true, true)] // a returned sheet says until when its pause lasts
    [InlineData(0, false, false)] // by somebody's own word it is off
    [InlineData(80, true, false)] // and a number stays whatever ends
    public void Only_off_with_an_end_on_a_returned_sheet_is_a_pause(double percent, bool onSheet, bool paused)
    {
        var said = new LogEntry
        {
            Time = new(Monday, new(14, 0)),
            Kind = LogKind.Setting,
            Where = Program,
            Value = percent,
            Unit = LogUnit.Percent,
            Until = new(Monday.AddDays(2), new(13, 0)),
            Sheet = onSheet ? Monday : null,
        };
        var history = History([Setting(60), said], new IssuedSheet(Monday, 1, At(Monday, 5), [new IssuedLine(Key, AdviceKind.Skip, null, Asks: true, PauseDays: 2)]));
        var (during, after) = (history.At(Key, At(Monday, 20)), history.At(Key, At(Monday.AddDays(2), 13)));
        Assert.Equal((percent, paused), (during.Setting.Percent, during.PausedUntil is not null));
        Assert.Equal(paused ? 60 : percent, after.Setting.Percent);
    }

    [Fact]
    public void A_pause_confirms_no_percentage()
    {
        var history = History([Pause(9, 1)]);
        Assert.Equal((100d, false), (history.At(Key, At(Monday, 9)).Setting.Percent, history.At(Key, At(Monday, 9)).Confirmed));
    }

    [Theory]
    [InlineData(2026, 10, 30, 10, 3, "2026-11-02T16:00")] // through the night of 25 hours
    [InlineData(2026, 3, 6, 2.5, 2, "2026-03-08T08:00")] // 02:30 does not exist on that day: the hour that spring skips ends at 03:00
    public void A_pause_ends_at_the_same_time_of_day(int year, int month, int day, double hour, int days, string utc)
    {
        var clock = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"));
        var from = clock.ToInstant(new(year, month, day), TimeOnly.MinValue.AddHours(hour));
        Assert.Equal(DateTimeOffset.Parse(utc + "Z", null), SettingHistory.PauseEnd(clock, from, days));
    }

    [Fact]
    public void Paused_over_tonight_it_stays_off_while_it_can_wait_and_is_turned_on_where_it_cannot()
    {
        var waits = NotDue(7) with { Log = [Pause(9, 4)] };
        Assert.Equal((AdviceKind.KeepOff, At(Sunday.AddDays(4), 9)), (waits.Advice().Advice, waits.Advice().PausedUntil!.Value));
        Assert.Equal(AdviceKind.Resume, (SmallCourse.OneStation(60) with { Log = [Pause(9, 4)] }).Advice().Advice);
    }

    [Fact]
    public void Paused_over_tonight_where_the_ground_needs_water_the_pause_is_to_be_ended()
    {
        var advice = (SmallCourse.OneStation(60) with { Log = [Pause(9, 5) with { Time = new(Sunday, new(9, 0)) }] }).Advice();
        Assert.Equal(AdviceKind.Resume, advice.Advice);
        Assert.Contains("its ground needs water before then: end the pause", advice.Reason.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("It is off", advice.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_pause_that_runs_out_before_tonights_start_is_a_setting_like_any_other()
    {
        // Until 09:00 today: at dawn the box is still paused, tonight it runs at 100 % again.
        var advice = (SmallCourse.OneStation(60) with { Log = [Pause(9, 1)] }).Advice();
        Assert.Equal((AdviceKind.Set, 100d), (advice.Advice, advice.Present.Percent));
        var wet = (NotDue(7) with { Log = [Pause(9, 1)] }).Advice();
        Assert.Equal((AdviceKind.Skip, 2, true), (wet.Advice, wet.PauseDays!.Value, wet.NeedsVisit));
    }

    [Fact]
    public void The_balance_books_nothing_while_it_is_paused_and_the_old_minutes_after()
    {
        var site = Irrigation.OneZone.Site(Irrigation.OneZone.Area, controller: Irrigation.OneZone.EveryNight);
        LogEntry[] log = [new() { Time = new(Irrigation.OneZone.First, new(1, 0)), Kind = LogKind.Pause, Where = Program, Value = 2 * 1440, Unit = LogUnit.Minutes }];
        var days = Irrigation.OneZone.Run(site, [.. Enumerable.Range(0, 4).Select(n => Irrigation.OneZone.Day(n, 5))], depletionMm: 40, log);
        Assert.Equal([0, 0, 5, 5], days.Select(d => Math.Round(d.IrrigationMm, 9))); // 30 min at 10 mm an hour, at 02:00
    }

    /// <summary>Not due before 30 mm: 25 tonight, 30 (not past it) tomorrow, 35 on Wednesday.</summary>
    private static SmallCourse NotDue(int most)
    {
        var course = SmallCourse.OneStation(20, SmallCourse.Area with { RunAt = 0.6 });
        return course with { Controller = course.Controller with { PauseDays = most } };
    }

    private static SettingHistory History(IReadOnlyList<LogEntry> log, params IssuedSheet[] sheets)
    {
        var site = SmallCourse.OneStation(0).Site;
        return new SettingHistory([new SiteVersion(site.Start, site)], log, sheets);
    }

    private static LogEntry Setting(double percent) => new() { Time = new(Sunday, new(8, 0)), Kind = LogKind.Setting, Where = Program, Value = percent };

    private static LogEntry Pause(int hour, int days) => new() { Time = new(Sunday, new(hour, 0)), Kind = LogKind.Pause, Where = Program, Value = days * 1440, Unit = LogUnit.Minutes };

    private static DateTimeOffset At(DateOnly date, int hour) => new(date.ToDateTime(new(hour, 0)), TimeSpan.Zero);
}
