using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Tests.Explain;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// A program that the logbook says is off, with a note of what is wrong, and a sheet of which nobody said whether it was carried out: supposing that
/// it was mends nothing. Off since Saturday for a leak; the sheet of Sunday 05:00 said to turn it on at 130 %; this is Monday's.
/// </summary>
public class UnansweredFaultTests
{
    private static readonly DateOnly Saturday = SmallCourse.Monday.AddDays(-2);
    private static readonly DateOnly Sunday = SmallCourse.Monday.AddDays(-1);
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly LogEntry Off = new() { Time = new(Saturday, new(9, 0)), Kind = LogKind.Off, Where = Program, Note = "leak at green 4" };
    private static readonly LogEntry NotMended = new() { Time = new(Sunday, new(10, 0)), Kind = LogKind.Note, Where = Program, Note = "not mended yet" };

    [Theory]
    [InlineData("not mended yet")]
    [InlineData("leaks again")]
    public void What_is_noted_after_the_sheet_keeps_it_off_since_whoever_noted_it_found_it_off(string note)
    {
        foreach (var depletionMm in new[] { 0.0, 20, 48, 60 })
        {
            var sheet = Unanswered(depletionMm, Off, NotMended with { Note = note }).Sheet();
            var advice = sheet.Programs.Single();
            Assert.Equal((AdviceKind.KeepOff, false), (advice.Advice, advice.NeedsVisit));
            Assert.Equal($"Off since Sat 2 May, \"{note}\": is that mended or over? A setting in the logbook, or the entry `checked` for box C1, hands it back to the numbers.", advice.Reason.ToString());
            Assert.Equal(note, advice.Fault!.Note);
            Assert.Null(advice.Unanswered);
            Assert.Empty(sheet.Freshness.UnansweredRounds);
        }
    }

    [Fact]
    public void The_box_off_for_no_noted_reason_and_noted_after_the_sheet_too()
    {
        var advice = Unanswered(60, Off with { Note = "" }, NotMended).Advice();
        Assert.Equal((AdviceKind.KeepOff, "not mended yet", null), (advice.Advice, advice.Fault!.Note, advice.Unanswered));
    }

    [Fact]
    public void An_older_note_goes_on_being_asked_about_whatever_the_ground_needs_and_nothing_is_just_set()
    {
        var kinds = new HashSet<AdviceKind>();
        foreach (var course in Grounds(Off))
        {
            var advice = course.Advice();
            kinds.Add(advice.Advice);
            Assert.Equal("leak at green 4", advice.Fault!.Note);
            Assert.NotNull(advice.Unanswered);
            Assert.Contains(advice.Advice, new[] { AdviceKind.Resume, AdviceKind.Skip });
            Assert.StartsWith(
                advice.Advice == AdviceKind.Resume ? "Off since Sat 2 May, \"leak at green 4\": turn it on only if that is mended or over. " : "Off since Sat 2 May, \"leak at green 4\". ",
                advice.Reason.ToString(), StringComparison.Ordinal);
            Assert.Equal(advice.Reason, advice.Chain[0].Words);
        }

        Assert.Equal(2, kinds.Count);

        // The check can fail: off for no noted reason, some of the same grounds ask for a bare number.
        Assert.Contains(Grounds(Off with { Note = "" }), c => c.Advice().Advice == AdviceKind.Set);
    }

    [Fact]
    public void A_note_that_it_is_mended_is_quoted_with_the_other_though_nobody_answered()
    {
        foreach (var course in Grounds(Off, NotMended with { Note = "mended" }))
        {
            var advice = course.Advice();
            Assert.Null(advice.Fault);
            Assert.NotNull(advice.Unanswered);
            Assert.True(advice.Advice != AdviceKind.Resume || advice.Reason.ToString().StartsWith("Off since Sat 2 May, \"leak at green 4\"; noted on C1/P1 since, Sun 3 May: \"mended\". ", StringComparison.Ordinal), advice.Reason.ToString());
        }

        Assert.Equal(AdviceKind.Resume, Unanswered(60, Off, NotMended with { Note = "mended" }).Advice().Advice);
    }

    [Fact]
    public void A_note_that_came_in_late_for_an_hour_before_the_sheet_keeps_it_off_and_the_sheet_stays_open()
    {
        var advice = Unanswered(60, Off, NotMended with { Time = new(Sunday, new(4, 0)) }).Advice();
        Assert.Equal((AdviceKind.KeepOff, "not mended yet", Sunday), (advice.Advice, advice.Fault!.Note, advice.Unanswered!.Sheet));
        Assert.Equal((AdviceKind.KeepOff, AdviceKind.KeepOff), (advice.Unanswered.IfDone.Kind, advice.Unanswered.AsLogged.Kind));

        // The same where the site keeps off whatever is off with a note, since today.
        var asks = (Unanswered(60, Off) with { Report = new ReportPolicy { OffWithNoteStaysOff = true } }).Advice();
        Assert.Equal((AdviceKind.KeepOff, "leak at green 4"), (asks.Advice, asks.Fault!.Note));
    }

    [Fact]
    public void A_setting_still_answers_the_sheet_and_the_note()
    {
        var advice = Unanswered(60, Off, NotMended, NotMended with { Time = new(Sunday, new(15, 0)), Kind = LogKind.Setting, Note = "", Value = 100, Unit = LogUnit.Percent }).Advice();
        Assert.Equal((AdviceKind.Set, null, null), (advice.Advice, advice.Fault, advice.Unanswered));
    }

    [Fact]
    public void A_note_on_a_program_that_runs_by_the_logbook_answers_nothing()
    {
        var advice = Unanswered(20, Off with { Kind = LogKind.Setting, Note = "", Value = 60, Unit = LogUnit.Percent }, NotMended).Advice();
        Assert.NotNull(advice.Unanswered);
        Assert.Null(advice.Fault);
    }

    [Fact]
    public void It_is_explained_with_the_same_numbers()
    {
        Assert.True(ProgramStepsTests.Followed(Unanswered(60, Off).Inputs(), []) > 10);
        Assert.True(ProgramStepsTests.Followed(Unanswered(60, Off, NotMended).Inputs(), []) > 10);
    }

    /// <summary>From full to dry, due early or late, after a number that was asked for small or large.</summary>
    private static IEnumerable<SmallCourse> Grounds(params LogEntry[] log) =>
        from depletionMm in Enumerable.Range(0, 16).Select(i => 4.0 * i)
        from runAt in new[] { 0.0, 0.5 }
        from leaveEmpty in new[] { 0.0, 0.6 }
        from percent in new[] { 20.0, 130 }
        select Unanswered(depletionMm, log, SmallCourse.Area with { RunAt = runAt, LeaveEmpty = leaveEmpty }, percent) with { Report = new ReportPolicy { SkipRoom = 0.3 } };

    private static SmallCourse Unanswered(double depletionMm, params LogEntry[] log) => Unanswered(depletionMm, log, SmallCourse.Area, 130);

    private static SmallCourse Unanswered(double depletionMm, LogEntry[] log, Area area, double percent) => SmallCourse.OneStation(depletionMm, area) with
    {
        Weather = [OneZone.Day(2, 5)],
        Log = log,
        Sheets = [new IssuedSheet(Sunday, 1, new DateTimeOffset(Sunday.ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(new("C1", "P1"), AdviceKind.Resume, percent, Asks: true)])],
    };
}
