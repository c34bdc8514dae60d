using System.Globalization;
using System.Text.Json;
using DailyAdjust.ServiceTests.Controllers;
using Xunit;

namespace DailyAdjust.ServiceTests.Orders;

/// <summary>
/// A program that is off for a broken valve, through the real program, morning after morning: neither a sheet that nobody answers nor a grow-in turns it on
/// over what is noted.
/// </summary>
public sealed class UnansweredFaultTests
{
    private const string OnlyIf = "Off since Sun 3 May, \"valve leaks\": turn it on only if that is mended or over.";
    private static readonly string Box = SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\""));

    [Fact]
    public void A_fault_noted_since_a_sheet_that_nobody_answered_keeps_the_program_off()
    {
        using var course = Broken("valve leaks");
        var asked = course.Morning();
        Assert.Equal("resume", asked.Said("C1/P1").Advice);
        Assert.Contains(OnlyIf, asked.Text, StringComparison.Ordinal);

        // Nobody answers: every sheet goes on to carry the note, and names both that may be on the dial.
        foreach (var date in new[] { "2026-05-05", "2026-05-06" })
        {
            var silent = course.Morning(date);
            Assert.Equal("resume", silent.Said("C1/P1").Advice);
            Assert.NotEqual(JsonValueKind.Null, silent.Program("C1/P1").GetProperty("unanswered").ValueKind);
            Assert.Equal("valve leaks", silent.Program("C1/P1").GetProperty("fault").GetProperty("note").GetString());
            Assert.StartsWith(OnlyIf, silent.Program("C1/P1").GetProperty("reason").GetString(), StringComparison.Ordinal);
            foreach (var written in new[] { silent.Text, silent.Page })
            {
                // Whoever reads only what waits for an answer reads the note there too.
                Assert.Matches($"said: turn on at [0-9]+ %. Nobody has answered. If it was done, today says: [^.]+. If not: turn on at [0-9]+ %. The round says [0-9]+ %: until somebody answers, a number moves by no more than a step a day. {OnlyIf}", written);
                Assert.Contains(OnlyIf, written, StringComparison.Ordinal);
                Assert.Contains("C1/P1 is off since Sun 3 May: \"valve leaks\" (Ana). Turn it on only if that is mended or over.", written, StringComparison.Ordinal);
                Assert.Matches("TURN ON, off or [0-9]+ % → [0-9]+ %", written);
                Assert.DoesNotContain("SET ", written, StringComparison.Ordinal);
            }
        }

        // Whoever notes that it is not mended found it off: that answers the sheets, and it stays off.
        Logged(course, "note", "C1/P1", "--date", "2026-05-06", "--time", "10:00", "--note", "not mended yet");
        foreach (var date in new[] { "2026-05-07", "2026-05-08" })
        {
            var kept = course.Morning(date);
            var program = kept.Program("C1/P1");
            Assert.Equal(("keep-off", 0), kept.Said("C1/P1"));
            Assert.Equal("not mended yet", program.GetProperty("fault").GetProperty("note").GetString());
            Assert.Equal(JsonValueKind.Null, program.GetProperty("unanswered").ValueKind);
            Assert.Equal("Off since Sun 3 May, \"not mended yet\": is that mended or over? A setting in the logbook, or the entry `checked` for box C1, hands it back to the numbers.", program.GetProperty("reason").GetString());
            Assert.Contains("C1/P1 is off since Sun 3 May: \"not mended yet\". If that is mended or over: dailyadjust log checked C1", kept.Text, StringComparison.Ordinal);
            Assert.Contains("\"not mended yet\"", kept.Page, StringComparison.Ordinal);
            Assert.DoesNotContain("TURN ON", kept.Text, StringComparison.Ordinal);
        }

        Logged(course, "note", "C1/P1", "--date", "2026-05-08", "--time", "10:00", "--note", "mended");
        Assert.StartsWith(
            "Off since Sun 3 May, \"not mended yet\"; noted on C1/P1 since, Fri 8 May: \"mended\".",
            course.Morning("2026-05-09").Program("C1/P1").GetProperty("reason").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void In_the_demo_a_lateral_that_leaks_again_stays_off_on_the_days_after_too()
    {
        using var home = new TestHome();
        string Done(params string[] arguments)
        {
            var result = RunningProgram.Run([.. arguments, "--home", home.Path]);
            return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
        }

        Assert.Contains("C Fairway 9: TURN ON, off → 140 %", Done("demo"), StringComparison.Ordinal);
        Done("log", "note", "B6/C", "--date", "2026-07-16", "--time", "10:00", "--note", "leaks again, not mended");

        // On Friday it has no start to decide about, on Saturday one.
        foreach (var date in new[] { "2026-07-17", "2026-07-18" })
        {
            Done("morning", "--date", date);
            var folder = Assert.Single(home.Home.Sites()).ReportFolder(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture));
            using var advice = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "advice.json")));
            var program = advice.RootElement.GetProperty("programs").EnumerateArray().Single(p => p.GetProperty("controller").ValueEquals("B6") && p.GetProperty("program").ValueEquals("C"));
            Assert.Equal("keep-off", program.GetProperty("advice").GetString());
            Assert.Equal("leaks again, not mended", program.GetProperty("fault").GetProperty("note").GetString());
            Assert.Contains("Fairway 9 (B6/C) is off since Mon 13 July: \"leaks again, not mended\".", File.ReadAllText(Path.Combine(folder, "report-full.txt")), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_grow_in_asks_for_a_program_that_is_off_and_until_somebody_says_that_it_is_on_nothing_ran()
    {
        using var course = Broken("");
        GrowIn(course);
        foreach (var date in new[] { "2026-05-04", "2026-05-05", "2026-05-06" })
        {
            var asked = course.Morning(date);
            Assert.Equal(("resume", 100), asked.Said("C1/P1"));
            Assert.DoesNotContain("Did it run? C1/P1", asked.Text, StringComparison.Ordinal);
        }

        Assert.Equal([0, 0], Irrigation(course, "2026-05-05"));
        Logged(course, "setting", "C1/P1", "100", "--date", "2026-05-06", "--time", "06:00");
        var on = course.Morning("2026-05-07");
        Assert.Equal(("leave", 100), on.Said("C1/P1"));
        Assert.Contains("Did it run? C1/P1", on.Text, StringComparison.Ordinal);
        var booked = Irrigation(course, "2026-05-06");
        Assert.Equal([0, 0], booked[..2]);
        Assert.True(booked[2] > 2, string.Join(' ', booked));
    }

    [Fact]
    public void Off_after_the_order_stops_a_grow_in_of_a_program_that_was_off_before()
    {
        using var course = Broken("");
        GrowIn(course);
        Assert.Equal("resume", course.Morning().Said("C1/P1").Advice);
        Logged(course, "off", "C1/P1", "--date", "2026-05-04", "--time", "15:00");
        Assert.Equal("keep-off", course.Morning("2026-05-05").Said("C1/P1").Advice);
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_grow_in_turns_on_nothing_that_is_noted_as_broken_and_after_its_end_that_is_still_asked_about(bool noted)
    {
        using var course = Broken("valve leaks");
        GrowIn(course);
        Assert.Equal("keep-off", course.Morning().Said("C1/P1").Advice);
        if (noted)
        {
            Logged(course, "note", "C1/P1", "--date", "2026-05-04", "--time", "10:00", "--note", "not mended yet");
        }

        var note = noted ? "not mended yet" : "valve leaks";
        foreach (var date in new[] { "2026-05-05", "2026-05-06", "2026-05-07" })
        {
            var kept = course.Morning(date);
            Assert.Equal("keep-off", kept.Said("C1/P1").Advice);
            Assert.Equal(note, kept.Program("C1/P1").GetProperty("fault").GetProperty("note").GetString());
            Assert.Contains($"Off with a note: mended or over? - C1/P1 is off since Sun 3 May: \"{note}\"", kept.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("TURN ON", kept.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("Did it run? C1/P1", kept.Text, StringComparison.Ordinal);
        }

        Assert.All(Irrigation(course, "2026-05-06"), mm => Assert.Equal(0, mm));

        // Its ground is dry by now. Beside `off` the note is asked about on the line that turns it on; a note of its own keeps it off.
        foreach (var date in new[] { "2026-05-08", "2026-05-09" })
        {
            var after = course.Morning(date);
            Assert.Equal(noted ? "keep-off" : "resume", after.Said("C1/P1").Advice);
            Assert.StartsWith(
                noted ? "Off since Sun 3 May, \"not mended yet\": is that mended or over?" : OnlyIf,
                after.Program("C1/P1").GetProperty("reason").GetString(), StringComparison.Ordinal);
            Assert.Equal(note, after.Program("C1/P1").GetProperty("fault").GetProperty("note").GetString());
        }
    }

    private static SmallCourse Broken(string note)
    {
        var course = new SmallCourse(Box, "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,60,10");
        course.Log($"2026-05-03 09:00,off,C1/P1,,,,Ana,{note}");
        return course;
    }

    /// <summary>From Monday 4 May through Thursday.</summary>
    private static void GrowIn(SmallCourse course) => course.Log("2026-05-04 04:00,grow-in,C1/P1,4 x 5 min,,2026-05-07,Ana,sod");

    private static void Logged(SmallCourse course, params string[] arguments)
    {
        var result = course.Run("log", arguments);
        Assert.True(result.ExitCode == 0, result.ToString());
    }

    /// <summary>Day by day from Monday on, mm.</summary>
    private static double[] Irrigation(SmallCourse course, string to)
    {
        var rows = CsvRows.Of(course.Run("balance", "--from", SmallCourse.Monday, "--to", to, "--format", "csv").Output);
        return [.. rows.Rows.Select(r => rows.Number(r, "irrigation_mm")!.Value)];
    }
}
