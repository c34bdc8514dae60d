using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>A box with one dial for two programs, through the real program: 60 of 70 and of 45 minutes, 135 % for both.</summary>
public sealed class OneDialTests
{
    private const string Stations = "controller,station,name,area,minutes P1,minutes P2,precipitation rate (mm/h)\nC1,1,green 1,greens,70,,10\nC1,2,tee 2,greens,,45,10";
    private static readonly string Box = SmallCourse.Box("C1", "{ applies: controller, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"20:00\""), ("P2", "\"22:00\""));

    [Fact]
    public void A_setting_of_one_program_counts_for_the_box_and_says_so()
    {
        using var course = new SmallCourse(Box, Stations);
        var said = course.Run("log", "setting", "C1/P1", "40", "--time", "2026-05-03 09:00");
        Assert.Equal(0, said.ExitCode);
        Assert.Contains("Note: the dial is the box's. The number counts for all programs of C1, for C1/P2 too; one that is off stays off.", said.Output, StringComparison.Ordinal);
        var sheet = course.Morning();
        Assert.All(new[] { "C1/P1", "C1/P2" }, p => Assert.Equal((40d, true), (sheet.Program(p).GetProperty("setting").GetDouble(), sheet.Program(p).GetProperty("confirmed").GetBoolean())));
        Assert.Equal((("set", 135), ("set", 135)), (sheet.Said("C1/P1"), sheet.Said("C1/P2")));

        // One line for the dial, and its reason names the tee that made the number.
        Assert.Contains("P1 + P2: SET 40 → 135 %", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("tee 2 (P2, on the same dial) will be", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("green 1 will be", sheet.Text, StringComparison.Ordinal);
        Assert.Empty(sheet.Freshness.GetProperty("neverConfirmed").EnumerateArray());
    }

    [Fact]
    public void One_row_of_the_round_answers_for_the_dial()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1,40,%,,Ana,");
        course.Morning();
        course.Return(("P1", "yes"));
        var next = course.Morning("2026-05-05");
        Assert.Empty(next.Freshness.GetProperty("unansweredRounds").EnumerateArray());
        Assert.All(new[] { "C1/P1", "C1/P2" }, p => Assert.Equal(135, next.Program(p).GetProperty("setting").GetDouble()));
    }

    [Fact]
    public void Rows_that_contradict_each_other_are_refused_with_the_reason()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1,40,%,,Ana,");
        course.Morning();
        var refused = course.Return(("P1", "yes"), ("P2", "no"));
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("C1/P2 was not turned and C1/P1 has 135 % in line 2, but one dial serves all of C1: none of its rows is used", refused.Output + refused.Error, StringComparison.Ordinal);
        var next = course.Morning("2026-05-05");
        Assert.All(new[] { "C1/P1", "C1/P2" }, p => Assert.Equal(40, next.Program(p).GetProperty("setting").GetDouble()));
        Assert.NotEmpty(next.Freshness.GetProperty("unansweredRounds").EnumerateArray());
    }

    [Fact]
    public void Off_stays_with_its_program()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1,40,%,,Ana,", "2026-05-03 10:00,off,C1/P2,,,,Ana,", "2026-05-03 11:00,setting,C1/P1,60,%,,Ana,");
        var sheet = course.Morning();
        Assert.Equal((60d, 0d), (sheet.Program("C1/P1").GetProperty("setting").GetDouble(), sheet.Program("C1/P2").GetProperty("setting").GetDouble()));
    }

    [Fact]
    public void A_round_done_except_one_program_says_that_the_dial_was_turned()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1,40,%,,Ana,");
        course.Morning();
        var said = course.Run("log", "round", SmallCourse.Monday, "done", "--except", "C1/P2", "--time", "2026-05-04 13:00");
        Assert.Contains("Where another program of C1 was done, its number counts for C1/P2 too; where the dial was not turned, write --except C1.", said.Output, StringComparison.Ordinal);
        Assert.Equal(135, course.Morning("2026-05-05").Program("C1/P2").GetProperty("setting").GetDouble());
    }
}
