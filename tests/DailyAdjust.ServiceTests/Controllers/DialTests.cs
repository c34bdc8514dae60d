using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>Controllers as they are, through the real program. Every zone needs 10 mm, an hour. Settings are logged too low at first: what runs longer than needed and drains nothing is left alone.</summary>
public sealed class DialTests
{
    private const string Dial = "{ applies: program, max: 200 %, step: 5 % }";
    private static readonly string[] Low = ["2026-05-03 09:00,setting,C1/P1,40,%,,Ana,", "2026-05-03 09:00,setting,C1/P2,40,%,,Ana,"];

    private const string Header = "controller,station,area,minutes P1,minutes P2,precipitation rate (mm/h)\n";

    [Fact]
    public void A_percentage_per_program_on_its_step_and_within_its_range()
    {
        // 60 of 70 and of 45 minutes: 85.7 and 133.3 %.
        using var fine = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 1 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,70,,10\nC1,2,greens,,45,10");
        fine.Log(Low);
        var sheet = fine.Morning();
        Assert.Equal((("set", 86), ("set", 133)), (sheet.Said("C1/P1"), sheet.Said("C1/P2")));
        using var coarse = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, min: 90 %, max: 120 %, step: 10 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,70,,10\nC1,2,greens,,45,10");
        // 40 % is nothing that this dial can show: both are off before.
        coarse.Log("2026-05-03 09:00,off,C1,,,,Ana,");
        var cut = coarse.Morning();
        Assert.Equal((("resume", 90), ("resume", 120)), (cut.Said("C1/P1"), cut.Said("C1/P2")));
        Assert.Contains(": 1.0 mm or 6 min short a start.", cut.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_percentage_for_the_whole_box_is_the_largest()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: controller, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,70,,10\nC1,2,greens,,45,10");
        course.Log(Low);
        var sheet = course.Morning();
        Assert.Equal((("set", 135), ("set", 135)), (sheet.Said("C1/P1"), sheet.Said("C1/P2")));
    }

    [Fact]
    public void A_setting_beyond_the_one_dial_of_a_box_is_settled_by_the_command_that_the_question_names()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: controller, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,70,,10\nC1,2,greens,,45,10");
        course.Log("2026-05-03 09:00,setting,C1,500,%,,Ana,");
        var sheet = course.Morning();
        Assert.Contains("C1/P1 and C1/P2: setting 500 % (09:00 yesterday, Ana) is beyond what the box can do (0-200 %): not used. Read the dial, then: dailyadjust log setting C1 ____ --site ", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("log setting C1/", sheet.Text, StringComparison.Ordinal);
        Assert.Equal(0, course.Run("log", "setting", "C1", "90", "--date", SmallCourse.Monday, "--time", "04:59").ExitCode);
        var after = course.Morning();
        Assert.DoesNotContain("is beyond what the box can do", after.Text, StringComparison.Ordinal);
        Assert.All(new[] { "C1/P1", "C1/P2" }, p => Assert.Equal(90, after.Program(p).GetProperty("setting").GetDouble()));
    }

    [Fact]
    public void A_box_without_a_percentage_is_told_its_minutes_in_its_own_step()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: none }", "minutes: { step: 6 s, rounding: nearest }", ("P1", "\"20:00\"")), "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,30.4,10\nC1,2,greens,30.2,10");
        var sheet = course.Morning();
        Assert.Equal(("set", 200), sheet.Said("C1/P1"));
        var minutes = sheet.Program("C1/P1").GetProperty("newMinutes").EnumerateArray().Select(m => (m.GetProperty("from").GetDouble(), m.GetProperty("to").GetDouble())).ToList();
        Assert.Equal([(30.4, 60.8), (30.2, 60.4)], minutes);
        Assert.Contains("station 1: 30.4 → 60.8 min", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("station 1 30.4 → 60.8 min", sheet.Page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_dial_that_shows_the_change()
    {
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 %, shows: change }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,50,,10\nC1,2,greens,,80,10");
        course.Log(Low);
        var sheet = course.Morning();
        Assert.Contains("120 % (the dial shows +20)", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("75 % (the dial shows -25)", sheet.Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("down", 19)]
    [InlineData("up", 21)]
    public void Minutes_go_the_way_the_box_rounds_and_finish_so(string rounding, int minutes)
    {
        // The dial stands at its end: 27 × 0.75 = 20.25 minutes, on a step of a minute or of 19.
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 75 %, step: 5 % }", $"minutes: {{ step: {(minutes == 19 ? 19 : 1)} min, rounding: {rounding} }}", ("P1", "\"22:00\"")), "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,27,10");
        course.Log("2026-05-03 09:00,setting,C1/P1,75,%,,Ana,");
        Assert.Equal(FormattableString.Invariant($"2026-05-04T22:{minutes}"), course.Morning().Program("C1/P1").GetProperty("finishes").GetString());
    }

    [Fact]
    public void Several_starts_share_the_need()
    {
        // An hour in two starts of 20 minutes.
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"20:00\", \"22:00\"")), "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,20,10");
        var sheet = course.Morning();
        Assert.Equal(("set", 150), sheet.Said("C1/P1"));
        Assert.Equal(2, sheet.Fit.GetProperty("runs").GetArrayLength());
    }

    [Theory]
    [InlineData("allowable", "set", 30)] // cannot wait: 9 of 40 minutes are raised to 12
    [InlineData("full", "skip", null)]
    public void Runs_shorter_than_the_least_are_raised_or_skipped(string soil, string advice, int? percent)
    {
        // Nothing may be skipped for its small number here, only for its short runs.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", Dial, "min_run: 12 min", ("P1", "\"22:00\"")),
            "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,40,67",
            "report: { skip_below: 0 % }",
            soil,
            soil is "full" ? "leave_empty: 2 %" : "leave_empty: 90 %");
        course.Log("2026-05-03 09:00,setting,C1/P1,20,%,,Ana,");
        var sheet = course.Morning();
        Assert.Equal((advice, percent), (sheet.Said("C1/P1").Advice, (int?)sheet.Said("C1/P1").Percent));
        Assert.Contains("most of the ground would run less than 12 min", sheet.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_in_two_programs_is_judged_in_the_order_of_starts_with_the_new_numbers()
    {
        // Half an hour, 5 mm, in each; 10 mm are asked of a night in which nothing but the allowable may be missing afterwards.
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 140 %, step: 5 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\"")), Header + "C1,1,greens,30,30,10", area: "leave_empty: 100 %");
        course.Log("2026-05-03 09:00,setting,C1/P1,40,%,,Ana,", "2026-05-03 09:01,setting,C1/P2,100,%,,Ana,");
        var sheet = course.Morning();

        // P1 puts back the 5 mm of a day, so that P2 has nothing left to do; with P1 still at 40 % it would have had to give 6 mm, 120 %.
        Assert.Equal((("set", 100), ("skip", null)), (sheet.Said("C1/P1"), sheet.Said("C1/P2")));
        Assert.Equal(0, sheet.Program("C1/P2").GetProperty("exactPercent").GetDouble(), 1e-3);
    }

    [Fact]
    public void More_than_the_ground_takes_at_once_is_told_in_starts_and_pauses()
    {
        // 10 mm/h on 8 mm/h with 1 mm standing: 30 minutes at once, and 7.5 to soak in.
        using var course = new SmallCourse(SmallCourse.Box("C1", "{ applies: program, max: 100 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")), "controller,station,name,area,minutes P1,precipitation rate (mm/h)\nC1,1,east bank,bank,55,10");
        const string Words = "More than the ground takes at once at east bank: in place of each start key in 2, 35 min from the beginning of one to that of the next, each with 1/2 of the base minutes (the longest then runs 27.5 min at 100 %).";
        Assert.Contains(Words, course.Morning().Page, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_points_out_what_no_percentage_mends()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 100 %, step: 5 % }", "route: 1", ("P1", "\"22:00\""), ("P2", "\"22:30\"")).Replace("id: P2, starts: [\"22:30\"], days: every day", "id: P2, starts: [\"22:30\"], days: [mon, tue]", StringComparison.Ordinal),
            Header + "C1,1,greens,75,,10\nC1,2,rough,20,20,10\nC1,3,rough,,20,10",
            area: "leave_empty: 0 %, exposure: 2");
        var said = course.Run("check");
        Assert.Equal(0, said.ExitCode);
        Assert.Contains("station C1/1 runs 75 min in P1", said.Output, StringComparison.Ordinal);
        Assert.Contains("station C1/2 has minutes in P1 and P2", said.Output, StringComparison.Ordinal);
        Assert.Contains("C1: P1 and P2 overlap at 100 % already", said.Output, StringComparison.Ordinal);
        Assert.Contains("C1/P2: 6 days from start to start draw 60.0 mm in the peak month at C1/3, allowed 50.0 mm", said.Output, StringComparison.Ordinal);
        Assert.Contains("even at 100 % a week gives", said.Output, StringComparison.Ordinal);
    }
}
