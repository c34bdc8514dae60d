using System.Text.Json;
using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>A round sheet that comes back, whichever way: of which sheet it can speak, and from when on it counts.</summary>
public sealed class ReturnedRoundTests : IDisposable
{
    private readonly SmallCourse _course = new(
        SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")),
        "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,60,10");

    public ReturnedRoundTests()
    {
        _course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        Assert.Equal(("set", 100), _course.Morning().Said("C1/P1"));
    }

    public void Dispose() => _course.Dispose();

    [Theory]
    [InlineData("2025-01-01/1", "no sheet of 2025-01-01 was issued")]
    [InlineData("2027-01-01/1", "no sheet of 2027-01-01 was issued")]
    [InlineData("2026-05-04/7", "the sheet of 2026-05-04 has no issue 7")]
    public void A_row_of_a_sheet_that_never_was_is_refused(string sheet, string why)
    {
        var file = _course.Filled(("P1", "yes"));
        File.WriteAllText(file, File.ReadAllText(file).Replace("2026-05-04/1", sheet, StringComparison.Ordinal));
        var before = _course.Settings();
        foreach (var command in new[] { "ingest", "log round" })
        {
            var taken = _course.Run(command.Split(' ')[0], [.. command.Split(' ')[1..], file]);
            Assert.Equal(2, taken.ExitCode);
            Assert.Contains(why, taken.Error, StringComparison.Ordinal);
        }

        _course.Drop("round.csv", file);
        Assert.Contains("round.csv was refused", _course.Run("morning", "--date", SmallCourse.Monday).Error, StringComparison.Ordinal);
        Assert.Equal(before, _course.Settings());

        // `log round` says the same of it.
        Assert.Contains(why, _course.Run("log", "round", sheet, "done").Error, StringComparison.OrdinalIgnoreCase);
        File.WriteAllText(file, $"time,kind,where,value\n2026-05-04 12:00,round,site,{sheet} done\n2026-05-04 12:10,note,C1,\n");
        var logbook = _course.Run("ingest", file);
        Assert.Equal(2, logbook.ExitCode);
        Assert.Contains(why, logbook.Error, StringComparison.Ordinal);
        Assert.Contains("1 rows read, 0 set aside, 1 refused", logbook.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_long_past_can_be_answered_as_long_as_it_is_asked_for()
    {
        var file = _course.Filled(("P1", "yes"));
        Assert.Equal(0, _course.Run("morning", "--date", "2026-06-20").ExitCode);
        Assert.Equal(0, _course.Run("log", "setting", "C1/P1", "80", "--time", "2026-06-19 10:00").ExitCode);
        const string Why = "he sheet of 2026-05-04 is more than 14 days older than the newest of 2026-06-20, and nothing of it is asked for any more";
        Assert.Contains(Why, _course.Run("log", "round", "2026-05-04", "done").Error, StringComparison.Ordinal);
        var taken = _course.Run("ingest", file);
        Assert.Equal(2, taken.ExitCode);
        Assert.Contains(Why, taken.Error, StringComparison.Ordinal);

        // Nobody has said anything since: the question stands.
        Assert.Equal(0, _course.Run("log", "void", "setting", "C1/P1", "--time", "2026-06-19 10:00").ExitCode);
        Assert.Equal(0, _course.Run("ingest", file).ExitCode);
        Assert.Contains("05-04 13:00 C1/P1 100", _course.Settings());
    }

    [Theory]
    [InlineData("log", "round", "2026-05-04", "done")]
    [InlineData("log", "round", "FILE")]
    [InlineData("ingest", "FILE")]
    public void Both_ways_of_answering_give_the_same_next_issue(params string[] command)
    {
        var file = _course.Filled(("P1", "sí"));
        Assert.Equal(0, _course.RunAt("2026-05-04 07:53:20", command[0], [.. command[1..].Select(w => w is "FILE" ? file : w)]).ExitCode);
        Assert.Equal(0, _course.RunAt("2026-05-04 07:53:40", "morning").ExitCode);
        var next = _course.Issued(new DateOnly(2026, 5, 4));
        Assert.Equal(("leave", 100), next.Said("C1/P1"));
        Assert.Equal(100, next.Program("C1/P1").GetProperty("setting").GetDouble());
        Assert.Equal(JsonValueKind.Null, _course.Morning("2026-05-05").Program("C1/P1").GetProperty("unanswered").ValueKind);
    }

    [Fact]
    public void An_answer_counts_from_when_it_came_and_a_corrected_one_takes_its_place()
    {
        Assert.Equal(0, _course.RunAt("2026-05-04 07:53:20", "ingest", _course.Filled(("P1", "yes"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 07:53 C1/P1 100"], _course.Settings());
        Assert.Equal(0, _course.RunAt("2026-05-04 09:10:00", "ingest", _course.Filled(("P1", "70"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 07:53 C1/P1 70"], _course.Settings());

        // The same file again adds nothing, at whatever time.
        Assert.Equal(0, _course.RunAt("2026-05-06 10:00:00", "ingest", _course.Filled(("P1", "70"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 07:53 C1/P1 70"], _course.Settings());
    }

    [Fact]
    public void An_answer_in_the_minute_of_its_sheet_is_one()
    {
        Assert.Equal(0, _course.RunAt("2026-05-04 05:00:20", "ingest", _course.Filled(("P1", "yes"))).ExitCode);
        Assert.Contains("05-04 05:00 C1/P1 100", _course.Settings());
        Assert.Equal(("leave", 100), _course.Morning().Said("C1/P1"));
        Assert.Equal(JsonValueKind.Null, _course.Morning("2026-05-05").Program("C1/P1").GetProperty("unanswered").ValueKind);
    }

    [Fact]
    public void A_late_answer_counts_from_the_end_of_the_round()
    {
        Assert.Equal(0, _course.RunAt("2026-05-04 21:15:00", "ingest", _course.Filled(("P1", "yes"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 13:00 C1/P1 100"], _course.Settings());
    }

    [Fact]
    public void What_is_said_in_the_same_minute_keeps_its_place()
    {
        Assert.Equal(0, _course.RunAt("2026-05-04 07:53:05", "log", "setting", "C1/P1", "60").ExitCode);
        Assert.Equal(0, _course.RunAt("2026-05-04 07:53:20", "ingest", _course.Filled(("P1", "yes"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 07:53 C1/P1 60", "05-04 07:53 C1/P1 100"], _course.Settings());
    }

    [Fact]
    public void The_second_round_of_a_date_keeps_the_answer_to_its_first()
    {
        using var course = new SmallCourse(
            SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1", ("P1", "\"22:00\"")),
            "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,60,10",
            "report: { at: [\"05:00\", \"16:00\"], round_done_by: \"13:00\" }");
        course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        course.Morning();
        Assert.Equal(0, course.RunAt("2026-05-04 12:10:00", "ingest", course.Filled(("P1", "50"))).ExitCode);
        Assert.Equal(0, course.RunAt("2026-05-04 16:00:30", "morning", "--date", SmallCourse.Monday, "--at", "16:00").ExitCode);
        Assert.Equal("set", course.Issued(new DateOnly(2026, 5, 4)).Said("C1/P1").Advice);
        Assert.Equal(0, course.RunAt("2026-05-04 17:30:00", "ingest", course.Filled(("P1", "yes"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 12:10 C1/P1 50", "05-04 16:01 C1/P1 100"], course.Settings());
        Assert.Equal(JsonValueKind.Null, course.Morning("2026-05-05").Program("C1/P1").GetProperty("unanswered").ValueKind);
    }

    [Fact]
    public void Log_round_takes_a_file_and_nothing_that_is_none()
    {
        var file = _course.Filled(("P1", "yes"));
        var taken = _course.Run("log", "round", file);
        Assert.True(taken.ExitCode == 0, taken.ToString());
        Assert.Contains("round sheet", taken.Output, StringComparison.Ordinal);
        Assert.EndsWith("1 rows read, 0 set aside, 0 refused\n", taken.Output, StringComparison.Ordinal);
        Assert.Contains("what was done, and what not, stands in the file", _course.Run("log", "round", file, "done").Error, StringComparison.Ordinal);

        File.WriteAllText(file, "time,kind,where\n");
        var other = _course.Run("log", "round", file);
        Assert.Equal(2, other.ExitCode);
        Assert.Contains("is no round sheet", other.Error, StringComparison.Ordinal);
        Assert.Contains("round.csv too", _course.Run("log", "round", "no-such.csv").Error, StringComparison.Ordinal);
    }
}
