using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Weather;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>Later looks of the course of round numbers: 5 mm a day expected, 10 mm an hour, 100 % = 10 mm, one start at 22:00.</summary>
public class LaterLookTests
{
    /// <summary>Noon at the site: half of the day is drawn (the course lies on the meridian of its clock; the equation of time is 3 minutes).</summary>
    private static readonly DateTimeOffset Noon = new(SmallCourse.Monday.ToDateTime(new(11, 57)), TimeSpan.Zero);

    private static readonly SmallCourse Course = SmallCourse.OneStation(10);

    [Fact]
    public void What_was_measured_takes_the_place_of_what_was_expected_until_then_and_nothing_counts_twice()
    {
        Assert.Equal(150, Course.Advice().ExactPercent!.Value, 3); // 10 and 5 missing
        var look = Course with { At = new(12, 30), EtoSoFar = new(4, Noon, "yard", IsSupplied: false) };
        var sheet = look.Sheet();
        Assert.InRange(sheet.SecondLook!.RestMm!.Value, 2.45, 2.55);
        Assert.Equal(10 * (10 + 4 + sheet.SecondLook.RestMm.Value), look.Advice().ExactPercent!.Value, 3);
        Assert.Equal(4 + sheet.SecondLook.RestMm.Value, sheet.Freshness.ExpectedEtoMm!.Value, 9);
    }

    [Fact]
    public void Rain_that_drains_meets_only_what_was_drawn_by_its_hour()
    {
        // Full at dawn; 4 mm measured by noon, and 20 mm of rain then: it drains but for 4, and 2.5 are drawn after it.
        var look = SmallCourse.OneStation(0) with { At = new(12, 30), EtoSoFar = new(4, Noon, "yard", false), RainSinceMidnight = [new(Noon, 20)], Log = [Off(SmallCourse.Monday.AddDays(-1))] };
        var sheet = look.Sheet();
        Assert.Equal(10 * sheet.SecondLook!.RestMm!.Value, sheet.Programs[0].ExactPercent!.Value, 3);
    }

    [Fact]
    public void The_first_look_and_hours_before_sunrise_leave_the_day_as_it_was_expected()
    {
        var early = new EtoSoFar(0.2, new(SmallCourse.Monday.ToDateTime(new(5, 0)), TimeSpan.Zero), "yard", false);
        Assert.Null(Course.Sheet().SecondLook);
        var look = (Course with { At = new(5, 10), EtoSoFar = early }).Sheet();
        Assert.Null(look.SecondLook!.Eto);
        Assert.Equal(150, look.Programs[0].ExactPercent!.Value, 3);
    }

    [Fact]
    public void After_the_round_it_speaks_about_the_starts_that_are_still_ahead()
    {
        var course = Course with { Controller = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "14:00", "22:00")] } };
        var early = course.Sheet();
        Assert.Equal(new DateTimeOffset(SmallCourse.Monday.ToDateTime(new(14, 0)), TimeSpan.Zero), early.Programs[0].NextStart);
        var late = (course with { At = new(16, 0) }).Sheet();
        Assert.True(late.SecondLook!.AfterRound);
        Assert.Equal(new DateTimeOffset(SmallCourse.Monday.ToDateTime(new(22, 0)), TimeSpan.Zero), late.Programs[0].NextStart);

        // The 14:00 start ran at 100 %: of the 15 missing tonight 10 are back, less what was not yet drawn.
        Assert.InRange(late.Programs[0].ExactPercent!.Value, 49.9, 50.1);
    }

    [Fact]
    public void After_the_round_a_morning_sheet_nobody_answered_is_an_open_question_and_before_it_none()
    {
        var morning = new IssuedSheet(SmallCourse.Monday, 1, new(SmallCourse.Monday.ToDateTime(new(5, 0)), TimeSpan.Zero), [new(new("C1", "P1"), AdviceKind.Set, 150, Asks: true)]);
        var course = Course with { Sheets = [morning] };
        Assert.Null((course with { At = new(11, 0) }).Advice().Unanswered);
        Assert.Equal(150, (course with { At = new(16, 0) }).Advice().Unanswered!.Percent);

        var done = new LogEntry { Time = new(SmallCourse.Monday, new(12, 30)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = SmallCourse.Monday };
        var answered = (course with { At = new(16, 0), Log = [done] }).Advice();
        Assert.Null(answered.Unanswered);
        Assert.Equal(150, answered.Present.Percent);
    }

    [Fact]
    public void The_answer_to_a_sheet_made_after_the_round_counts_from_when_it_was_there()
    {
        var evening = new IssuedSheet(SmallCourse.Monday, 2, new(SmallCourse.Monday.ToDateTime(new(16, 0)), TimeSpan.Zero), [new(new("C1", "P1"), AdviceKind.Set, 60, Asks: true)]);

        // A round sheet that comes back stands at the hour by which the round was to be done.
        var back = new LogEntry { Time = new(SmallCourse.Monday, new(13, 0)), Kind = LogKind.Setting, Where = new(PlaceKind.Program, "C1", "P1"), Value = 60, Unit = LogUnit.Percent, Sheet = SmallCourse.Monday, Issue = 2 };
        var site = Course.Site;
        var settings = new SettingHistory([new(site.Start, site)], [back], [evening]);
        Assert.Equal(100, settings.At(new("C1", "P1"), evening.AsOf.AddHours(-1)).Setting.Percent);
        Assert.Equal(60, settings.At(new("C1", "P1"), evening.AsOf.AddHours(1)).Setting.Percent);
        // What is said of a sheet is said after it was made.
        Assert.Equal((true, false), (settings.IsAnswered(new("C1", "P1"), evening.AsOf), settings.IsAnswered(new("C1", "P1"), evening.AsOf.AddTicks(1))));
    }

    private static LogEntry Off(DateOnly date) => new() { Time = new(date, new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1") };
}
