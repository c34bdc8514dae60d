using System.Text.Json;
using Xunit;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>What a row of a round sheet that comes back can say, and what is said back of it. Monday's sheet says 25 → 100.</summary>
public sealed class RoundRowTests : IDisposable
{
    private const string Tuesday = "2026-05-05";

    private readonly SmallCourse _course = new(
        SmallCourse.Box("C1", "{ applies: program, max: 200 %, step: 5 % }", "route: 1\n    place: pump house", ("P1", "\"22:00\"")),
        "controller,station,area,minutes P1,precipitation rate (mm/h)\nC1,1,greens,60,10");

    public RoundRowTests()
    {
        _course.Log("2026-05-03 09:00,setting,C1/P1,25,%,,Ana,");
        Assert.Equal(("set", 100), _course.Morning().Said("C1/P1"));
    }

    public void Dispose() => _course.Dispose();

    [Fact]
    public void No_on_a_dial_that_nobody_read_leaves_the_earlier_question_open()
    {
        Assert.Equal("2026-05-04", Asked(_course.Morning(Tuesday)));
        var taken = _course.Run("ingest", _course.FilledRow(Tuesday, "2026-05-05/1", ("done", "no")));
        Assert.Equal(0, taken.ExitCode);
        Assert.Contains("C1/P1 (pump house): nothing was turned;", taken.Output, StringComparison.Ordinal);
        var wednesday = _course.Morning("2026-05-06");
        Assert.Equal(("2026-05-04", 25), (Asked(wednesday), wednesday.Program("C1/P1").GetProperty("setting").GetDouble()));

        // What the dial showed settles it, in the place of the bare no.
        Assert.Equal(0, _course.Run("ingest", _course.FilledRow(Tuesday, "2026-05-05/1", ("done", "no"), ("found", "100"))).ExitCode);
        var thursday = _course.Morning("2026-05-07");
        Assert.Equal(100, thursday.Program("C1/P1").GetProperty("setting").GetDouble());
        Assert.NotEqual("2026-05-04", Asked(thursday));
    }

    [Fact]
    public void A_row_of_an_earlier_round_names_its_issue_and_a_bare_date_is_still_read()
    {
        _course.Morning(Tuesday);
        Assert.Equal(0, _course.Run("ingest", _course.FilledRow(Tuesday, "2026-05-04/1", ("sheet", "2026-05-04"), ("done", "60"))).ExitCode);
        Assert.Contains("05-04 13:00 C1/P1 60", _course.Settings());
        Assert.Equal(0, _course.Run("ingest", _course.FilledRow(Tuesday, "2026-05-04/1", ("done", "yes"))).ExitCode);
        Assert.Equal(["05-03 09:00 C1/P1 25", "05-04 13:00 C1/P1 100"], _course.Settings());
    }

    [Fact]
    public void A_row_whose_number_was_altered_is_refused_with_what_the_sheet_said()
    {
        var before = _course.Settings();
        var taken = _course.Run("ingest", _course.FilledRow(SmallCourse.Monday, "2026-05-04/1", ("new", "50"), ("done", "yes")));
        Assert.Equal(2, taken.ExitCode);
        Assert.Contains("sheet 2026-05-04/1 said 100 % and new is 50 % here", taken.Error, StringComparison.Ordinal);
        Assert.Contains("a number that was set otherwise belongs into done, one that the dial showed into found", taken.Error, StringComparison.Ordinal);
        Assert.EndsWith("Nothing was taken: 1 file refused.\n", taken.Error, StringComparison.Ordinal);
        Assert.Equal(before, _course.Settings());
        Assert.Equal(0, _course.Run("ingest", _course.FilledRow(SmallCourse.Monday, "2026-05-04/1", ("old", "70"), ("done", "50"))).ExitCode);
        Assert.Contains(" C1/P1 50", _course.Settings()[^1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("05-04 07:30", "--date", "2026-05-04", "--time", "07:30")]
    [InlineData("05-04 07:30", "--time", "2026-05-04 07:30")]
    [InlineData("05-04 13:00", "--date", "2026-05-04")]
    [InlineData("05-04 13:00", "--date", "2026-05-04", "--time", "19:00")]
    [InlineData("05-04 05:00", "--date", "2026-05-04", "--time", "05:00")]
    [InlineData("05-04 05:00", "--date", "2026-05-03", "--time", "05:00")] // not before there was a sheet
    public void A_file_counts_as_of_the_time_that_is_said_beside_it(string from, params string[] options)
    {
        var taken = _course.RunAt("2026-05-06 10:00:00", "log", ["round", _course.Filled(("P1", "yes")), .. options, "--by", "Lee"]);
        Assert.True(taken.ExitCode == 0, taken.ToString());
        Assert.Equal(["05-03 09:00 C1/P1 25", from + " C1/P1 100"], _course.Settings());
        Assert.Contains($"  C1/P1 (pump house): set to 100 %; counts from 2026-{from}\n", taken.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("what was done, and what not, stands in the file", "--except", "C1/P1")]
    [InlineData("--until cannot go with a file: what was set has no end", "--until", "2026-05-08")]
    [InlineData("--note cannot go with a file: each row has a cell for its own", "--note", "late")]
    [InlineData("--instrument and --rod are of a moisture meter", "--rod", "3 in")]
    [InlineData("--time soon is no time", "--time", "soon")]
    public void What_cannot_go_with_a_file_is_refused_with_the_reason(string why, params string[] options)
    {
        var before = _course.Settings();
        var refused = _course.Run("log", ["round", _course.Filled(("P1", "yes")), .. options]);
        Assert.Equal(2, refused.ExitCode);
        Assert.Contains(why, refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, _course.Settings());
    }

    private static string? Asked(SmallCourse.Sheet sheet) =>
        sheet.Program("C1/P1").GetProperty("unanswered") is { ValueKind: JsonValueKind.Object } asked ? asked.GetProperty("sheet").GetString() : null;
}
