using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class RoundCsvTests
{
    private static IReadOnlyList<string> Lines { get; } = Rendered.Lines(ReportFiles.RoundCsv);

    [Fact]
    public void It_has_the_columns_that_come_back() =>
        Assert.Equal("sheet,controller,place,program,name,advice,old,new,done,found,note,pause days", Lines[0]);

    [Fact]
    public void One_row_for_every_dial_to_turn_then_what_waits_for_an_answer()
    {
        var keys = Lines.Skip(1).Select(l => l.Replace("\"'=HYPERLINK(\"\"x\"\")\"", "", StringComparison.Ordinal).Split(',')).Select(c => $"{c[0]} {c[1]}/{c[3]} {c[5]}");
        Assert.Equal(
            [
                "2026-07-15/2 A/P2 skip", "2026-07-15/2 B/P1 set", "2026-07-15/2 B/P3 resume", "2026-07-15/2 C/P1 set", "2026-07-15/2 C/P2 set",
                "2026-07-15/2 D/P1 set", "2026-07-15/2 E/P1 off", "2026-07-13/1 B/P2 set", "2026-07-15/2 E/P2 leave",
            ],
            keys);
    }

    [Fact]
    public void Old_and_new_are_numbers_and_off_is_0()
    {
        Assert.Contains(Lines, l => l.Contains(",Fairways 1-3,skip,100,0,,,", StringComparison.Ordinal));
        Assert.Contains(Lines, l => l.Contains(",Greens 4-6,set,90,60,,,", StringComparison.Ordinal));
        Assert.Contains(Lines, l => l.Contains(",Tees,resume,0,75,,,", StringComparison.Ordinal));
    }

    [Fact]
    public void A_row_of_an_earlier_round_carries_that_rounds_number() =>
        Assert.Contains(Lines, l => l.StartsWith("2026-07-13/1,B,", StringComparison.Ordinal) && l.Contains(",P2,Fairways 4-6,set,100,80,,,", StringComparison.Ordinal));

    [Fact]
    public void A_program_that_nobody_confirmed_is_asked_for_at_its_assumed_setting() =>
        Assert.Contains(Lines, l => l.Contains(",P2,Nursery,leave,100,100,,,Nobody has confirmed", StringComparison.Ordinal));

    [Trait("Promise", "11")]
    [Fact]
    public void A_note_says_what_else_the_hand_does_at_the_box()
    {
        var sheet = InventedMorning.Ordinary();
        var lines = Rendered.Lines(ReportFiles.RoundCsv, sheet with
        {
            Programs =
            [
                sheet.Programs[0] with { Advice = AdviceKind.Off, LeavesDial = true, OffUntil = InventedMorning.Date.AddDays(5) },
                sheet.Programs[1] with { Advice = AdviceKind.Resume, Percent = 75, Condition = Phrase.Verbatim("Turn it on only if that is mended."), InPlace = new StartsInPlace(2, 200, 2, null) },
            ],
        });
        Assert.Contains("Leave the dial and take this program's starts out. Must not run through Mon 20 July.", lines[1], StringComparison.Ordinal);
        Assert.Contains("Turn it on only if that is mended. More than the ground takes at once", lines[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_that_looks_like_a_formula_stays_text() =>
        Assert.Contains(Lines, l => l.Contains("\"'=HYPERLINK(\"\"x\"\")\"", StringComparison.Ordinal));
}
