using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>A program that is off with a note of what is wrong is asked about.</summary>
public class FaultTests
{
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly Place Box = new(PlaceKind.Controller, "C1", "");
    private static readonly DateOnly Sunday = SmallCourse.Monday.AddDays(-1);
    private static readonly LogEntry OffForALeak = At(9) with { Kind = LogKind.Off, Note = "leak at green 4" };
    private static readonly LogEntry Off = OffForALeak with { Note = "" };
    private static readonly LogEntry Leak = At(10) with { Kind = LogKind.Note, Note = "leak at green 4" };

    [Fact]
    public void Off_for_no_noted_reason_it_is_turned_on_when_its_ground_needs_water()
    {
        var advice = Dry(Off).Advice();
        Assert.Equal(AdviceKind.Resume, advice.Advice);
        Assert.Null(advice.Fault);
    }

    [Fact]
    public void A_note_on_it_keeps_it_off_with_the_question()
    {
        var advice = Dry(Off, Leak).Advice();
        Assert.Equal(AdviceKind.KeepOff, advice.Advice);
        Assert.Equal("Off since Sun 3 May, \"leak at green 4\": is that mended or over? A setting in the logbook, or the entry `checked` for box C1, hands it back to the numbers.", advice.Reason.ToString());
        Assert.Equal("leak at green 4", advice.Fault!.Note);
    }

    [Fact]
    public void A_note_beside_off_asks_on_the_line_that_turns_it_on_and_keeps_it_off_where_the_site_says_so()
    {
        var advice = Dry(OffForALeak).Advice();
        Assert.Equal(AdviceKind.Resume, advice.Advice);
        Assert.StartsWith("Off since Sun 3 May, \"leak at green 4\": turn it on only if that is mended or over.", advice.Reason.ToString(), StringComparison.Ordinal);
        Assert.Equal(AdviceKind.KeepOff, (Dry(OffForALeak) with { Report = new ReportPolicy { OffWithNoteStaysOff = true } }).Advice().Advice);
    }

    [Fact]
    public void A_setting_or_a_checked_box_hands_it_back()
    {
        Assert.Equal(AdviceKind.Resume, Dry(Off, Leak, At(11) with { Kind = LogKind.Checked, Where = Box }).Advice().Advice);
        Assert.Equal(AdviceKind.Set, Dry(Off, Leak, At(11) with { Kind = LogKind.Setting, Value = 100 }).Advice().Advice);
    }

    [Fact]
    public void What_does_not_hand_it_back()
    {
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, At(11) with { Kind = LogKind.Setting, Value = 0 }).Advice().Advice); // found off on a round
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, At(9) with { Kind = LogKind.Checked, Where = Box, Time = new(Sunday, new(9, 30)) }, Leak).Advice().Advice); // before the note
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, At(11) with { Kind = LogKind.Checked, Where = new(PlaceKind.Controller, "C2", "") }).Advice().Advice);
    }

    [Fact]
    public void A_note_from_while_it_ran_or_on_the_whole_box_is_no_fault()
    {
        Assert.Equal(AdviceKind.Resume, Dry(Leak with { Time = new(Sunday, new(8, 0)) }, Off).Advice().Advice);
        Assert.Equal(AdviceKind.Resume, Dry(Off, Leak with { Where = Box }).Advice().Advice);
    }

    [Theory]
    [InlineData("C1/P1", "mended")]
    [InlineData("C1", "Mended.")]
    [InlineData("C1", "leak at green 4 fixed, Lee")]
    [InlineData("C1", "lateral mended and flushed; program C still off")]
    [InlineData("C1/P1", "the broken head at 7 repaired")]
    [InlineData("C1/P1", "leaking valve has been mended today - Lee")]
    [InlineData("C1/P1", "green 4 leak fixed")]
    [InlineData("C1/P1", "(mended)")]
    public void A_later_note_on_it_or_its_box_that_says_it_is_mended_answers_and_both_are_quoted(string where, string note)
    {
        var said = At(11) with { Note = note, Where = where is "C1" ? Box : Program };
        foreach (var advice in new[] { Dry(Off, Leak, said).Advice(), (Dry(OffForALeak, said) with { Report = new ReportPolicy { OffWithNoteStaysOff = true } }).Advice() })
        {
            Assert.Equal(AdviceKind.Resume, advice.Advice);
            Assert.Null(advice.Fault);
            Assert.StartsWith($"Off since Sun 3 May, \"leak at green 4\"; noted on {where} since, Sun 3 May: \"{note}\". It is off", advice.Reason.ToString(), StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("not mended yet")]
    [InlineData("will be fixed on Friday")]
    [InlineData("isn't repaired")]
    [InlineData("mended?")]
    [InlineData("half of it repaired")]
    [InlineData("mended, still leaks")]
    [InlineData("unmended")]
    [InlineData("valve ordered")]
    [InlineData("")]
    [InlineData("fixed spray head broken at 7")]
    [InlineData("fixed nozzles at green 7")]
    [InlineData("repaired valve leaks")]
    [InlineData("valve 2 repaired, leaks at 7")]
    [InlineData("valve 3 fixed; valve 2 stuck")]
    [InlineData("valve stuck, head mended")]
    [InlineData("head 3 broken head 4 fixed")]
    [InlineData("head broken pipe fixed")]
    [InlineData("mended 2 of 3 heads")]
    [InlineData("2 of 3 heads mended")]
    [InlineData("2/3 mended")]
    [InlineData("80 % mended")]
    [InlineData("temporarily mended")]
    [InlineData("fixed for now")]
    [InlineData("partly repaired")]
    [InlineData("mended, broken again")]
    [InlineData("most heads mended")]
    [InlineData("one head mended, the rest on Monday")]
    [InlineData("have it mended")]
    public void A_note_that_does_not_clearly_say_so_answers_nothing(string note)
    {
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, At(11) with { Note = note }).Advice().Advice);
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, At(11) with { Note = note, Where = Box }).Advice().Advice);
    }

    [Fact]
    public void Mended_answers_what_was_noted_before_it_at_that_box_and_nothing_else()
    {
        var mended = At(11) with { Note = "mended", Where = Box };
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, mended with { Time = new(Sunday, new(9, 30)) }, Leak).Advice().Advice);
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, mended with { Where = new(PlaceKind.Controller, "C2", "") }).Advice().Advice);
        Assert.Equal(AdviceKind.KeepOff, Dry(Off, Leak, mended with { Where = new(PlaceKind.Site, "", "") }).Advice().Advice);

        var again = Dry(Off, Leak, mended, At(12) with { Note = "leaks again" }).Advice();
        Assert.Equal((AdviceKind.KeepOff, "leaks again"), (again.Advice, again.Fault!.Note));
    }

    [Fact]
    public void What_says_it_is_mended_is_no_fault_of_its_own()
    {
        var mended = At(11) with { Note = "mended" };
        foreach (var advice in new[] { Dry(Off, mended).Advice(), (Dry(Off, mended) with { Report = new ReportPolicy { OffWithNoteStaysOff = true } }).Advice() })
        {
            Assert.Equal(AdviceKind.Resume, advice.Advice);
            Assert.Null(advice.Fault);
            Assert.StartsWith("Off since Sun 3 May; noted on C1/P1 since, Sun 3 May: \"mended\". It is off and its ground now needs water", advice.Reason.ToString(), StringComparison.Ordinal);
        }

        // A box has other programs, too: with nothing noted on this one, it speaks of them.
        Assert.StartsWith("It is off and its ground now needs water", Dry(Off, mended with { Where = Box }).Advice().Reason.ToString(), StringComparison.Ordinal);
    }

    /// <summary>A word that also names a kind of head must not make the first note of a fault an answer to nothing.</summary>
    [Theory]
    [InlineData("fixed spray head broken at 7")]
    [InlineData("repaired valve leaks")]
    public void The_first_note_of_a_fault_that_has_such_a_word_is_asked_about(string note)
    {
        var advice = Dry(Off, At(11) with { Note = note }).Advice();
        Assert.Equal((AdviceKind.KeepOff, note), (advice.Advice, advice.Fault?.Note));
    }

    [Fact]
    public void The_question_fits_weather_as_it_fits_a_fault()
    {
        var storm = Off with { Note = "for the storm" };
        Assert.StartsWith("Off since Sun 3 May, \"for the storm\": turn it on only if that is mended or over. It is off", Dry(storm).Advice().Reason.ToString(), StringComparison.Ordinal);
        Assert.StartsWith("Off since Sun 3 May, \"for the storm\": is that mended or over?", (Dry(storm) with { Report = new ReportPolicy { OffWithNoteStaysOff = true } }).Advice().Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void On_a_box_with_one_percentage_it_does_not_drive_the_others()
    {
        var course = new SmallCourse
        {
            Controller = SmallCourse.Box with { Applies = PercentApplies.Controller, PercentMax = 600, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] },
            Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
            DepletionMm = [60, 48],
            Log = [At(8) with { Kind = LogKind.Setting, Where = Box, Value = 50, Unit = LogUnit.Percent }, Off, Leak],
        };
        var programs = course.Sheet().Programs;
        Assert.Equal((AdviceKind.KeepOff, AdviceKind.Set, 530d), (programs[0].Advice, programs[1].Advice, programs[1].Percent!.Value));
    }

    private static SmallCourse Dry(params LogEntry[] log) => SmallCourse.OneStation(60) with { Log = log };

    private static LogEntry At(int hour) => new() { Time = new(Sunday, new(hour, 0)), Kind = LogKind.Note, Where = Program };
}
