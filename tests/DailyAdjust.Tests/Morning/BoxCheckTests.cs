using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>Boxes that somebody has to go and look at.</summary>
public class BoxCheckTests
{
    private static readonly Place Everywhere = new(PlaceKind.Site, "", "");
    private static readonly Place Box = new(PlaceKind.Controller, "C1", "");

    [Fact]
    public void A_box_without_power_is_listed_until_somebody_verified_it_after_the_power_was_back()
    {
        var lost = Entry(LogKind.Power, Everywhere, -1, "22:00") with { Until = new LogTime(SmallCourse.Monday, new(3, 0)), Note = "lightning" };
        var box = Assert.Single(Sheet(lost).BoxesToVerify).Box;
        Assert.Equal(("C1", "lightning", 22, 3), (box.Controller, box.Note, box.Since.Hour, box.Back!.Value.Hour));
        Assert.Single(Sheet(lost, Entry(LogKind.Checked, Box, 0, "02:59")).BoxesToVerify);
        Assert.Empty(Sheet(lost, Entry(LogKind.Checked, Box, 0, "03:00")).BoxesToVerify);
        Assert.Empty(Sheet(lost, Entry(LogKind.Checked, Everywhere, 0, "04:00")).BoxesToVerify);
        Assert.Single(Sheet(lost, Entry(LogKind.Checked, Box, 0, "04:00"), Entry(LogKind.Power, Box, 0, "04:30")).BoxesToVerify);
        Assert.Empty(Sheet(Entry(LogKind.Power, new(PlaceKind.Controller, "C9", ""), -1, "22:00")).BoxesToVerify);
    }

    [Fact]
    public void A_check_before_the_power_was_back_is_told_and_does_not_count()
    {
        var lost = Entry(LogKind.Power, Everywhere, 0, "01:00") with { Until = new LogTime(SmallCourse.Monday, new(3, 0)) };
        Assert.Null(Assert.Single(Sheet(lost).BoxesToVerify).Box.CheckedEarly);
        Assert.Null(Assert.Single(Sheet(lost, Entry(LogKind.Checked, Box, 0, "00:59")).BoxesToVerify).Box.CheckedEarly);
        Assert.Equal(2, Assert.Single(Sheet(lost, Entry(LogKind.Checked, Box, 0, "02:00")).BoxesToVerify).Box.CheckedEarly!.Value.Hour);
        Assert.Empty(Sheet(lost, Entry(LogKind.Checked, Box, 0, "02:00"), Entry(LogKind.Checked, Box, 0, "04:00")).BoxesToVerify);
    }

    [Fact]
    public void A_loss_of_which_only_the_date_is_known_counts_with_that_dates_sheet_and_has_no_hour()
    {
        var clock = SmallCourse.OneStation(10).Site.Clock;
        var lost = new LogEntry { Time = new(SmallCourse.Monday, null), Kind = LogKind.Power, Where = Box, Until = new LogTime(SmallCourse.Monday, null) };
        Assert.Equal(clock.DayStart(SmallCourse.Monday), lost.CountsFrom(clock));
        var box = Assert.Single(Sheet(lost).BoxesToVerify).Box;
        Assert.Equal((false, false), (box.SinceHasHour, box.BackHasHour));
        Assert.Equal((SmallCourse.Monday, SmallCourse.Monday), (clock.DateOf(box.Since), clock.DateOf(box.Back!.Value)));
        Assert.Empty(Sheet(lost, Entry(LogKind.Checked, Box, 0, "04:00")).BoxesToVerify);
    }

    /// <summary>Source: the IANA time zone database. Lord Howe Island moves by half an hour; Arizona does not move.</summary>
    [Theory]
    [InlineData("America/Chicago", "2026-03-08", "2026-03-08 08:00", 60)]
    [InlineData("America/Chicago", "2026-11-01", "2026-11-01 07:00", -60)]
    [InlineData("Australia/Sydney", "2026-04-05", "2026-04-04 16:00", -60)]
    [InlineData("Australia/Lord_Howe", "2026-04-05", "2026-04-04 15:00", -30)]
    [InlineData("Europe/Berlin", "2026-03-29", "2026-03-29 01:00", 60)]
    [InlineData("America/Phoenix", "2026-03-08", null, 0)]
    [InlineData("America/Chicago", "2026-03-07", null, 0)]
    [InlineData("America/Chicago", "2026-03-09", null, 0)]
    public void The_clocks_are_moved_when_the_zone_moves_them(string zone, string date, string? utc, double minutes)
    {
        var change = new SiteClock(TimeZoneInfo.FindSystemTimeZoneById(zone)).ChangeOn(DateOnly.ParseExact(date, "yyyy-MM-dd", null));
        Assert.Equal(utc, change?.At.ToString("yyyy-MM-dd HH:mm", null));
        Assert.Equal(minutes, change?.By.TotalMinutes ?? 0);
    }

    [Theory]
    [InlineData("2026-03-06", null)]
    [InlineData("2026-03-07", true)]
    [InlineData("2026-03-08", false)]
    [InlineData("2026-03-14", false)]
    [InlineData("2026-03-15", null)]
    [InlineData("2026-10-31", true)]
    [InlineData("2026-11-01", false)]
    public void The_sheets_before_and_after_remind_of_the_box_clocks(string date, bool? ahead)
    {
        var sheet = Chicago(date, standard: false).Sheet();
        Assert.Equal(ahead, sheet.ClockChange?.IsAhead);
        Assert.Null(Chicago(date, standard: true).Sheet().ClockChange);
    }

    [Fact]
    public void A_box_that_was_verified_after_the_change_is_not_reminded_of()
    {
        var course = Chicago("2026-03-09", standard: false);
        LogEntry At(string date, string time) => new() { Time = new(DateOnly.ParseExact(date, "yyyy-MM-dd", null), TimeOnly.ParseExact(time, "HH:mm", null)), Kind = LogKind.Checked, Where = Box };
        Assert.Equal(["C1"], (course with { Log = [At("2026-03-07", "15:00")] }).Sheet().ClockChange!.Controllers);
        Assert.Null((course with { Log = [At("2026-03-08", "09:00")] }).Sheet().ClockChange);
        var closed = new LogEntry { Time = new(new(2026, 3, 1), new(9, 0)), Kind = LogKind.Season, Where = Everywhere, Text = SeasonState.Drained };
        Assert.Null((course with { Log = [closed] }).Sheet().ClockChange);
    }

    private static SmallCourse Chicago(string date, bool standard) => SmallCourse.OneStation(10) with
    {
        Date = DateOnly.ParseExact(date, "yyyy-MM-dd", null),
        Zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"),
        Controller = SmallCourse.Box with { ClockStaysStandard = standard },
        Described = site => site with { Start = new(2026, 1, 1) },
    };

    private static MorningSheet Sheet(params LogEntry[] log) => (SmallCourse.OneStation(10) with { Log = log }).Sheet();

    private static LogEntry Entry(LogKind kind, Place where, int day, string time) =>
        new() { Time = new(SmallCourse.Monday.AddDays(day), TimeOnly.ParseExact(time, "HH:mm", null)), Kind = kind, Where = where };
}
