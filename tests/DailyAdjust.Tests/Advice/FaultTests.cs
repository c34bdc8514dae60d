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
        Assert.Equal("Off since Sun 3 May, \"leak at green 4\": is it mended? A setting, or `checked` of C1, hands it back to the numbers.", advice.Reason);
        Assert.Equal("leak at green 4", advice.Fault!.Note);
    }

    [Fact]
    public void A_note_beside_off_asks_on_the_line_that_turns_it_on_and_keeps_it_off_where_the_site_says_so()
    {
        var advice = Dry(OffForALeak).Advice();
        Assert.Equal(AdviceKind.Resume, advice.Advice);
        Assert.StartsWith("Off since Sun 3 May, \"leak at green 4\": turn it on only if that is mended.", advice.Reason, StringComparison.Ordinal);
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
