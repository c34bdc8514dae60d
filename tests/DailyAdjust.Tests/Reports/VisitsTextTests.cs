using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Text;
using DailyAdjust.Tests.Advice;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What `visits` says to a person.</summary>
public sealed class VisitsTextTests
{
    private static readonly VisitWorth Dry = new(new("C1", "P1"), SmallCourse.Monday.AddDays(1), AdviceKind.Resume, 80, WastedMm: 0, WastedL: 0, ZonesBeyond: 3, DaysBeyond: 0, BeyondMm: 2.5, IsAlert: false) { Cost = 1 };

    [Fact]
    public void What_was_noted_on_a_program_that_is_off_stands_behind_the_words_that_turn_it_on()
    {
        LogEntry off = new() { Time = new(SmallCourse.Monday.AddDays(-1), new(9, 0)), Kind = LogKind.Off, Where = new(PlaceKind.Program, "C1", "P1"), Note = "leak at green 4" };
        const string NotedBefore = "Off since Sun 3 May, \"leak at green 4\": turn it on only if that is mended or over.";
        Assert.Contains($". {NotedBefore}", Said(MorningCalculation.Visits((SmallCourse.OneStation(60) with { Log = [off] }).Inputs())), StringComparison.Ordinal);
        Assert.DoesNotContain("mended", Said(MorningCalculation.Visits((SmallCourse.OneStation(60) with { Log = [off with { Note = "" }] }).Inputs())), StringComparison.Ordinal);

        // Answered, it is no condition any more: both notes are quoted.
        var mended = off with { Time = new(SmallCourse.Monday.AddDays(-1), new(11, 0)), Kind = LogKind.Note, Note = "leak mended" };
        Assert.Contains(
            ". Off since Sun 3 May, \"leak at green 4\"; noted on C1/P1 since, Sun 3 May: \"leak mended\".",
            Said(MorningCalculation.Visits((SmallCourse.OneStation(60) with { Log = [off, mended] }).Inputs())), StringComparison.Ordinal);

        // On the sheet too, where nobody comes today.
        var thursdays = SmallCourse.Box with { Programs = [SmallCourse.EveryNight("P1", "22:00") with { Visit = new VisitDays.Weekdays([DayOfWeek.Thursday]) }] };
        Assert.Equal(NotedBefore, Assert.Single((SmallCourse.OneStation(60) with { Controller = thursdays, Log = [off] }).Sheet().IfVisited).NotedBefore.ToString());
    }

    [Fact]
    public void A_figure_of_none_is_not_said()
    {
        Assert.EndsWith("costs: 3 zones go past the allowable, the worst by 2.5 mm.", Costs(Dry), StringComparison.Ordinal);
        Assert.EndsWith("costs: 3 zones go past the allowable, the worst by 2.5 mm, on 4 days added up over them.", Costs(Dry with { DaysBeyond = 4 }), StringComparison.Ordinal);
        Assert.EndsWith("costs: 1 zone goes past the allowable, by under 0.1 mm, on 1 day.", Costs(Dry with { ZonesBeyond = 1, DaysBeyond = 1, BeyondMm = 0.01 }), StringComparison.Ordinal);
        Assert.EndsWith("costs: about 150 L would drain.", Costs(Dry with { ZonesBeyond = 0, WastedMm = 1.5, WastedL = 150 }), StringComparison.Ordinal);
        Assert.EndsWith("costs: a little water would drain.", Costs(Dry with { ZonesBeyond = 0, WastedMm = 0.001, WastedL = 0.1 }), StringComparison.Ordinal);
        Assert.EndsWith("costs: nothing that is reckoned here; it can wait.", Costs(Dry with { ZonesBeyond = 0, WastedMm = 1e-15, WastedL = 1e-13 }), StringComparison.Ordinal);
        Assert.Contains("until Tue 5 May: under 0.1 mm would drain.", Said(Of(Dry with { ZonesBeyond = 0, WastedMm = 0.001, WastedL = 0.1 })), StringComparison.Ordinal);
        Assert.Contains("; it can wait until Tue 5 May.", Said(Of(Dry with { ZonesBeyond = 0, WastedMm = 1e-15, WastedL = 1e-13 })), StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_that_nobody_answered_is_named()
    {
        var said = Said(Of(Dry) with { UnansweredRounds = [new(SmallCourse.Monday.AddDays(-1), null)] });
        Assert.Contains("! Not answered: the round of Sun 3 May. Today's numbers take it that nothing was changed.", said, StringComparison.Ordinal);
    }

    /// <summary>Of leaving the second of two boxes.</summary>
    private static string Costs(VisitWorth left)
    {
        var said = Said(Of(Dry, left), 1);
        var begin = said.IndexOf("Leaving it", StringComparison.Ordinal);
        return said[begin..(said.IndexOf(" Each box", begin, StringComparison.Ordinal))];
    }

    private static VisitsToday Of(params VisitWorth[] boxes) =>
        new(SmallCourse.OneStation(0).Site, SmallCourse.Monday, null, [.. boxes.Select(w => new BoxVisit(SmallCourse.Box, [w], []))]);

    private static string Said(VisitsToday visits, int? boxes = null) =>
        string.Join(' ', VisitsText.Write(visits, boxes).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
