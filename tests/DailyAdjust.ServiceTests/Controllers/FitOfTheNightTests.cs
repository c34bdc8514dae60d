using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>Other starts, cuts and taken-out stations as the sheet tells them, through the real program.</summary>
public sealed class FitOfTheNightTests
{
    private const string Dial = "{ applies: program, max: 200 %, step: 5 % }";
    private const string TwoPrograms = "controller,station,area,minutes P1,minutes P2,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,60,,10,100,600\nC1,2,rough,,60,10,100,600";
    private const string OneProgram = "controller,station,area,minutes P1,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,60,10,100,600\nC1,2,rough,60,10,100,600";

    [Fact]
    public void A_start_before_the_round_is_not_proposed_and_the_sheet_says_that_dates_are_kept()
    {
        var box = SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"22:00\""), ("P2", "\"22:00\""));
        box = box.Replace("id: P2, starts: [\"22:00\"], days: every day", "id: P2, starts: [\"22:00\"], days: [mon, thu]", StringComparison.Ordinal);
        using var course = new SmallCourse(box, TwoPrograms, "pump: { capacity: 150 L/min }\nwindow: { opens: \"21:30\", closes: \"23:30\" }");
        var sheet = course.Morning();
        Assert.DoesNotContain("would fit", sheet.Text, StringComparison.Ordinal);
        Both(sheet, "C1/P2: no first start within 12 hours of the present one, on its own date and after the round, fits while the others stay.");
        Both(sheet, "C1/P1: no first start within 12 hours of the present one fits while the others stay.");
    }

    [Fact]
    public void A_daily_program_is_told_a_start_past_midnight()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"20:00\"")), OneProgram, "window: { opens: \"00:30\", closes: \"05:00\" }");
        Both(course.Morning(), "A first start that would fit: C1/P1 at 00:30 instead of 20:00.");
    }

    [Fact]
    public void A_station_that_alone_asks_more_than_the_pump_gives_is_named()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"22:00\"")), OneProgram, "pump: { capacity: 80 L/min }");
        var sheet = course.Morning();
        Both(sheet, "C1/P1: station C1/1 alone asks 100 L/min and the pump gives 80 L/min. No other start, fewer minutes or other days help");
        Assert.DoesNotContain("no first start within", sheet.Text, StringComparison.Ordinal);
        var found = Assert.Single(sheet.Fit.GetProperty("beyondPump").EnumerateArray());
        Assert.Equal(("1", 100, 80), (found.GetProperty("station").GetString(), found.GetProperty("flow").GetDouble(), found.GetProperty("capacity").GetDouble()));
    }

    [Fact]
    public void What_the_dial_could_not_give_is_short_too()
    {
        // 10 mm are needed and half an hour at 100 % brings 5: 200 %. The dial ends at 180 %, the window after half an hour.
        const string Half = "controller,station,area,minutes P1,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,30,10,100,600";
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 180 %, step: 5 % }", "min_run: 0 min", ("P1", "\"22:00\"")), Half, "window: { opens: \"20:00\", closes: \"22:30\" }");
        course.Log("2026-05-03 09:00,setting,C1/P1,120,%,,Ana,");
        Both(course.Morning(), "cut from 180 % to 100 %, because the watering window closes at 22:30 today; 5.0 mm or 30 min short a start.");
    }

    [Fact]
    public void A_number_that_nobody_answered_is_cut_like_any_other()
    {
        // Two programs at 22:00, one at 22:45. From Tuesday on the pump carries one station: what ends by 22:45 is out of the third one's way.
        var boxes = $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""), ("P2", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:45\""))}";
        using var course = new SmallCourse(boxes, TwoPrograms + "\nC2,1,greens,60,,10,100,600", "pump: { capacity: 500 L/min }");
        course.Log("2026-05-03 09:00,setting,site,100,%,,Ana,", "2026-05-03 09:01,setting,C1/P2,25,%,,Ana,");
        Assert.Equal(("set", 100), course.Morning().Said("C1/P2"));
        course.Log("2026-05-05 04:00,pump,pump,150,L/min,2026-05-09,Ana,second pump is out");
        var tuesday = course.Morning("2026-05-05");
        Assert.Equal("2026-05-04", tuesday.Program("C1/P2").GetProperty("unanswered").GetProperty("sheet").GetString());
        Assert.Equal(("set", 75), tuesday.Said("C1/P2"));
        Both(tuesday, "C1/P2: cut from 100 % to 75 %");
    }

    [Fact]
    public void What_one_night_lacked_holds_no_later_number_down()
    {
        // As above, but the pump is whole again on Wednesday: nobody has answered, and the number stays near Tuesday's 100 %, not near what was left of it.
        var boxes = $"{SmallCourse.Box("C1", Dial, "route: 1", ("P1", "\"22:00\""), ("P2", "\"22:00\""))}\n{SmallCourse.Box("C2", Dial, "route: 2", ("P1", "\"22:45\""))}";
        using var course = new SmallCourse(boxes, TwoPrograms + "\nC2,1,greens,60,,10,100,600", "pump: { capacity: 500 L/min }");
        course.Log("2026-05-03 09:00,setting,site,100,%,,Ana,", "2026-05-03 09:01,setting,C1/P2,25,%,,Ana,");
        course.Morning();
        course.Log("2026-05-05 04:00,pump,pump,150,L/min,2026-05-05,Ana,second pump is out");
        Assert.Equal(("set", 75), course.Morning("2026-05-05").Said("C1/P2"));
        var (advice, percent) = course.Morning("2026-05-06").Said("C1/P2");
        Assert.Equal("set", advice);
        Assert.InRange(percent!.Value, 95, 105);
    }

    [Fact]
    public void Did_it_run_tells_when_a_box_that_lets_programs_wait_was_done()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "overlap: stack", ("P1", "\"22:00\""), ("P2", "\"22:30\"")), TwoPrograms);
        course.Morning();
        Assert.Contains("22:30 yesterday to 00:00", course.Morning("2026-05-05").Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("days: even", " Through today.")]
    [InlineData("hours: { from: \"21:00\", until: \"23:00\" }", "")]
    public void A_rule_over_a_part_of_a_program_takes_its_stations_out(string rule, string until)
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"22:00\"")), OneProgram, $"restrictions: [ {{ name: rough rule, areas: [rough], {rule} }} ]");
        var sheet = course.Morning();
        Assert.Equal(("leave", 100), sheet.Said("C1/P1"));
        Both(sheet, $"take out station 2, from 22:00 today on. Watering rule: rough rule.{until}");

        using var whole = new SmallCourse(SmallCourse.Box("C1", Dial, "min_run: 0 min", ("P1", "\"22:00\"")), OneProgram, $"restrictions: [ {{ name: rough rule, areas: [rough, greens], {rule} }} ]");
        Assert.Equal("off", whole.Morning().Said("C1/P1").Advice);
    }

    [Theory]
    [InlineData(500, "3.0 mm")] // tonight's start brings the rest
    [InlineData(200, "6.0 mm")] // the dial's end would bring 2 mm more, which is worth no walk: 2 of the 8 mm come that are missing in the evening beyond the room for rain
    public void The_hose_brings_what_tonight_s_start_does_not(int most, string depth)
    {
        // 50 mm down, 2 mm at 04:00, 5 mm drawn: 53 in the evening, allowable 50, 45 are left empty.
        const string Short = "controller,station,area,minutes P1,precipitation rate (mm/h),flow (L/min),area watered (m2)\nC1,1,greens,12,10,100,600";
        using var course = new SmallCourse(SmallCourse.Box("C1", $"{{ applies: program, max: {most} %, step: 5 % }}", "min_run: 0 min", ("P1", "\"04:00\"")), Short);
        var sheet = course.Morning();
        Assert.Contains($"hose on {depth}", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("goes past the allowable today", sheet.Page, StringComparison.Ordinal);
    }

    /// <summary>The same words on the page and in the text.</summary>
    private static void Both(SmallCourse.Sheet sheet, string words)
    {
        Assert.Contains(words, sheet.Page, StringComparison.Ordinal);
        Assert.Contains(words, sheet.Text, StringComparison.Ordinal);
    }
}
