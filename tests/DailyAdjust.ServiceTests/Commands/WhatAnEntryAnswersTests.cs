using DailyAdjust.ServiceTests.Controllers;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Whoever logs something is told which of the sheet's questions it answers.</summary>
public sealed class WhatAnEntryAnswersTests
{
    private static SmallCourse Greens() => new(
        SmallCourse.Box("C1", "{ applies: program, max: 400 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")),
        "controller,station,name,area,minutes P1,precipitation rate (mm/h)\nC1,1,green 1,greens,60,10");

    [Fact]
    public void Rain_says_which_days_are_known_now_and_which_are_not()
    {
        using var course = Greens();
        course.Weather("2026-05-04,5.0,", "2026-05-05,5.0,", "2026-05-06,5.0,0.0");
        Assert.Equal(0, course.Run("morning", "--date", "2026-05-07").ExitCode);
        var monday = course.Run("log", "rain", "yard", "3", "mm", "--date", "2026-05-04").Output;
        Assert.Contains("That answers the rain of gauge yard on Mon 4 May. Still not known: Tue 5 May; a line with that date alone gives its total.", monday, StringComparison.Ordinal);
        var wednesday = course.Run("log", "rain", "yard", "3", "mm", "--date", "2026-05-06").Output;
        Assert.Contains("It answers none of the days whose rain is asked for at gauge yard. Still not known: Tue 5 May", wednesday, StringComparison.Ordinal);
        var tuesday = course.Run("log", "rain", "yard", "0", "mm", "--date", "2026-05-05").Output;
        Assert.Contains("That answers the rain of gauge yard on Tue 5 May.", tuesday, StringComparison.Ordinal);
        Assert.DoesNotContain("Still not known", tuesday, StringComparison.Ordinal);
        Assert.DoesNotContain("answers", course.Run("log", "rain", "yard", "1", "mm", "--date", "2026-05-05").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_of_a_sheet_that_asked_for_no_change_answers_nothing()
    {
        using var course = Greens();
        Assert.Equal("leave", course.Morning().Said("C1/P1").Advice);
        Assert.Contains("Note: sheet 2026-05-04/1 asked for no dial to be turned, so this answers nothing.", course.Run("log", "round", "2026-05-04", "done").Output, StringComparison.Ordinal);
        course.Log("2026-05-05 04:00,hold,C1/P1,,,2026-05-06 12:00,Lee,match");
        Assert.Equal("off", course.Morning("2026-05-05").Said("C1/P1").Advice);
        Assert.DoesNotContain("Note: sheet", course.Run("log", "round", "2026-05-05", "done").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Rain_that_is_unknown_is_the_reason_where_it_holds_a_number_down_and_is_told_before_the_hose()
    {
        using var course = Greens();
        course.Log("2026-05-04 04:00,setting,C1/P1,50,%,,,");
        course.Weather("2026-05-04,5.0,");
        Assert.Equal(0, course.Run("morning", "--date", "2026-05-05").ExitCode);
        var sheet = course.Issued(new DateOnly(2026, 5, 5));
        Assert.Equal(("leave", 50), sheet.Said("C1/P1"));
        Assert.Contains("Some of the rain is unknown, so nothing is raised above its setting: enter the gauge.", sheet.Page, StringComparison.Ordinal);
        Assert.Contains("Rain that is unknown counts as none here: probe before you hose.", sheet.Page, StringComparison.Ordinal);
    }
}
