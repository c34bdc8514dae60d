using System.Globalization;
using System.Text.Json;
using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>Sheets that nobody answers, and ground of which nobody knows how wet it is, through the real program.</summary>
public sealed class UnansweredTests
{
    private const string Stations = "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,60,10";
    private static readonly string Box = SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\""));

    [Fact]
    public void Fourteen_mornings_without_an_answer_stay_bounded_and_one_answer_settles_all()
    {
        // A quarter of an hour a night where half an hour is drawn: as logged the ground dries out and asks for ever more.
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        (int Day, double Percent)? last = null;
        for (var n = 0; n < 14; n++)
        {
            var sheet = course.Morning(Date(n));
            var program = sheet.Program("C1/P1");
            if (n == 1)
            {
                var open = program.GetProperty("unanswered");
                Assert.Equal(("2026-05-04", "set"), (open.GetProperty("sheet").GetString(), open.GetProperty("advice").GetString()));
                Assert.NotEqual(open.GetProperty("ifDone").GetRawText(), open.GetProperty("asLogged").GetRawText());
                const string Words = "Mon 4 May said: set 100 %. Nobody has answered. If it was done, today says:";
                Assert.Contains(Words, sheet.Text, StringComparison.Ordinal);
                Assert.Contains(Words, sheet.Page, StringComparison.Ordinal);
                Assert.Contains("2026-05-04", sheet.Freshness.GetProperty("unansweredRounds")[0].GetString(), StringComparison.Ordinal);
            }

            if (sheet.Said("C1/P1") is ("set" or "resume", { } percent))
            {
                Assert.InRange(Math.Abs(percent - (last?.Percent ?? percent)), 0, 5 * (n - (last?.Day ?? n)));
                last = (n, percent);
            }
        }

        // As logged the dial would have run to its end.
        var before = course.Morning(Date(14)).Program("C1/P1").GetProperty("unanswered");
        Assert.Equal(200, before.GetProperty("asLogged").GetProperty("percent").GetDouble());
        Assert.True(last!.Value.Percent < 170, $"{last.Value.Percent} %");
        Assert.Equal(0, course.Run("log", "setting", "C1/P1", "70", "--time", $"{Date(14)} 14:00").ExitCode);
        var after = course.Morning(Date(15));
        Assert.Equal(JsonValueKind.Null, after.Program("C1/P1").GetProperty("unanswered").ValueKind);
        Assert.Equal(70, after.Program("C1/P1").GetProperty("setting").GetDouble());
    }

    [Fact]
    public void A_skip_that_was_obeyed_but_never_logged_comes_back_as_resume()
    {
        // Full ground that is not due before 25 mm: off on the first day, 5 mm a day.
        using var course = new SmallCourse(Box, Stations, soil: "full", area: "leave_empty: 50 %, run_at: 50 %");
        Assert.Equal("skip", course.Morning().Said("C1/P1").Advice);
        var resumed = Enumerable.Range(1, 7).First(n => course.Morning(Date(n)).Said("C1/P1").Advice is "resume");
        Assert.InRange(resumed, 4, 6);
        Assert.Contains("TURN ON", course.Morning(Date(resumed)).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("assumed", "")]
    [InlineData("full", "2026-05-04 00:00,season,C1,open,,,Ana,")]
    public void Nothing_is_skipped_or_cut_on_ground_that_was_only_assumed_and_a_probe_is_asked_for(string soil, string season)
    {
        using var course = new SmallCourse(Box, Stations, soil: soil, area: "leave_empty: 30 %, run_at: 90 %");
        if (season.Length > 0)
        {
            course.Log(season);
        }

        var sheet = course.Morning();
        Assert.Equal(("leave", 100), sheet.Said("C1/P1"));
        Assert.Equal("1", Assert.Single(sheet.Freshness.GetProperty("assumedSoil").EnumerateArray()).GetProperty("station").GetString());
        Assert.Contains("probe", sheet.Text, StringComparison.OrdinalIgnoreCase);

        // 30 % by volume is field capacity: now it is known, and not due.
        course.Log("2026-05-04 04:00,probe,C1/1,30,%,,Ana,");
        var probed = course.Morning();
        Assert.Equal("skip", probed.Said("C1/P1").Advice);
        Assert.Empty(probed.Freshness.GetProperty("assumedSoil").EnumerateArray());
    }

    [Fact]
    public void A_round_that_is_told_in_the_minute_of_its_sheet_is_answered()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        Assert.Equal("set", course.Morning().Said("C1/P1").Advice);
        Assert.Equal(0, course.Run("log", "round", "2026-05-04", "done", "--date", "2026-05-04", "--time", "05:00").ExitCode);
        Assert.Equal(JsonValueKind.Null, course.Morning(Date(1)).Program("C1/P1").GetProperty("unanswered").ValueKind);
    }

    [Fact]
    public void Rounds_that_were_passed_over_are_named_and_one_command_tells_them_all()
    {
        using var course = new SmallCourse(Box, Stations);
        course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        var said = Enumerable.Range(0, 4).Select(n => course.Morning(Date(n)).Said("C1/P1")).ToList();
        Assert.All(said, s => Assert.NotEqual("leave", s.Advice));

        Assert.Contains("That one and all rounds before it that were not answered: dailyadjust log round 2026-05-04..2026-05-06 done", course.Morning(Date(3)).Text, StringComparison.Ordinal);

        // Only the newest is answered: nothing is open, but the three before may have been done too.
        Assert.Equal(0, course.Run("log", "round", Date(3), "done", "--date", Date(3), "--time", "12:00").ExitCode);
        var sheet = course.Morning(Date(4));
        Assert.Equal(JsonValueKind.Null, sheet.Program("C1/P1").GetProperty("unanswered").ValueKind);
        const string Words = "3 rounds from Mon 4 May to Wed 6 May, though a later one is. The ground is reckoned as if nothing had been turned on them";
        Assert.Contains(Words, sheet.Text, StringComparison.Ordinal);
        Assert.Contains(Words, sheet.Page, StringComparison.Ordinal);
        Assert.Contains("log round 2026-05-04..2026-05-06 done", sheet.Text, StringComparison.Ordinal);
        var dry = sheet.Program("C1/P1").GetProperty("zones")[0].GetProperty("depletionMm").GetDouble();

        var told = course.Run("log", "round", "2026-05-04..2026-05-06", "done", "--date", Date(4), "--time", "04:30");
        Assert.Equal((0, 3), (told.ExitCode, told.Output.Split("Added: ").Length - 1));
        var answered = course.Morning(Date(4));
        Assert.DoesNotContain("though a later one is", answered.Text, StringComparison.Ordinal);
        Assert.True(answered.Program("C1/P1").GetProperty("zones")[0].GetProperty("depletionMm").GetDouble() < dry - 5);
        Assert.Equal(2, course.Run("log", "round", "2026-05-06..2026-05-04", "done").ExitCode);

        // What somebody has answered already is not answered anew.
        Assert.Equal(2, course.Run("log", "round", "2026-05-04..2026-05-07", "done", "--date", Date(4), "--time", "04:40").ExitCode);
    }

    [Fact]
    public void The_mornings_round_stays_open_beside_that_of_a_later_look()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\""), ("P2", "\"15:00\"")),
            "controller,station,area,minutes P1,minutes P2,precipitation rate (mm/h)\nC1,1,greens,60,,10\nC1,2,rough,,60,10",
            "report: { at: [\"05:00\", \"16:00\"], round_done_by: \"13:00\" }");
        course.Log("2026-05-03 09:00,setting,C1,25,%,,Ana,");
        Assert.Equal("set", course.Morning().Said("C1/P2").Advice);
        course.Run("morning", "--date", SmallCourse.Monday, "--at", "16:00");

        // P2 has run at 15:00 and is asked about by the morning's sheet alone; a later look's answer does not speak of it.
        Assert.Equal(0, course.Run("log", "round", "2026-05-04/2", "done", "--date", "2026-05-04", "--time", "17:00").ExitCode);
        var sheet = course.Morning(Date(1));
        Assert.Equal(JsonValueKind.Null, sheet.Program("C1/P1").GetProperty("unanswered").ValueKind);
        Assert.Equal("2026-05-04", sheet.Program("C1/P2").GetProperty("unanswered").GetProperty("sheet").GetString());
        Assert.Contains("log round 2026-05-04/1 done", sheet.Text, StringComparison.Ordinal);
        Assert.Equal(0, course.Run("log", "round", "2026-05-04/1", "done", "--date", "2026-05-04", "--time", "12:00").ExitCode);
        Assert.Equal(JsonValueKind.Null, course.Morning(Date(1)).Program("C1/P2").GetProperty("unanswered").ValueKind);
    }

    [Fact]
    public void Nothing_is_left_out_on_assumed_ground_though_an_unanswered_sheet_may_have_been_done()
    {
        // Asked for a number on the first mornings, then nothing is due: as logged nothing is skipped on ground that is only assumed, so neither is it if that was done.
        using var course = new SmallCourse(Box, Stations, soil: "assumed", area: "leave_empty: 30 %, run_at: 60 %");
        course.Log("2026-05-03 09:00,setting,C1/P1,10,%,,Ana,");
        for (var n = 0; n < 8; n++)
        {
            Assert.NotEqual("skip", course.Morning(Date(n)).Said("C1/P1").Advice);
        }
    }

    private static string Date(int after) => new DateOnly(2026, 5, 4).AddDays(after).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
