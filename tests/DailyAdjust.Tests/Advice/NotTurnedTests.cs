using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// The dial was at 90; Saturday's sheet said 120 and nobody answered; Sunday's said "90 or 120 → 70". Somebody says that Sunday's change was not made: nobody read the dial,
/// so on Monday it is at 90 or at 120.
/// </summary>
public sealed class NotTurnedTests
{
    private static readonly DateOnly Saturday = SmallCourse.Monday.AddDays(-2);
    private static readonly DateOnly Sunday = SmallCourse.Monday.AddDays(-1);
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");

    private static readonly SmallCourse Asked = SmallCourse.OneStation(45) with
    {
        Log = [Said(Saturday.AddDays(-1), new(9, 0), 90)],
        Sheets = [Sheet(Saturday, 120), Sheet(Sunday, 70)],
    };

    private static readonly LogEntry NotTurned = Said(Sunday, new(13, 0), null) with { Sheet = Sunday, Issue = 1, Text = LogEntry.NotTurned };

    private static readonly LogEntry NotDone = NotTurned with { Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Text = "", Except = [Program] };

    public static TheoryData<string> Ways { get; } = ["no in round.csv", "round done except"];

    [Theory]
    [MemberData(nameof(Ways))]
    public void That_todays_change_was_not_made_leaves_the_earlier_question_open(string way)
    {
        var advice = With(Way(way)).Advice();
        Assert.Equal((90, 120, Saturday), (advice.Present.Percent, advice.Unanswered?.Percent, advice.Unanswered?.Sheet));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void It_answers_its_own_sheet(string way)
    {
        // Of both sheets unanswered the newest is asked for.
        Assert.Equal(Sunday, Asked.Advice().Unanswered?.Sheet);
        var one = With(Way(way)) with { Sheets = [Sheet(Sunday, 70)] };
        Assert.Equal((90, (DateOnly?)null), (one.Advice().Present.Percent, one.Advice().Unanswered?.Sheet));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void What_stands_on_the_dial_is_what_is_said_of_it_before_or_after(string way)
    {
        var read = With(Way(way), Said(Sunday, new(14, 0), 120)).Advice();
        var walkedLate = With(Way(way), Said(Saturday, new(13, 0), 120) with { Sheet = Saturday, Issue = 1 }).Advice();
        Assert.Equal((120, null, 120, null), (read.Present.Percent, read.Unanswered, walkedLate.Present.Percent, walkedLate.Unanswered));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void A_later_issue_of_the_round_asks_again(string way)
    {
        var again = With(Way(way)) with { Sheets = [Sheet(Saturday, 120), Sheet(Sunday, 70), Sheet(Sunday, 80) with { Issue = 2, AsOf = At(Sunday, 13).AddMinutes(1) }] };
        Assert.Equal((80, Sunday), (again.Advice().Unanswered?.Percent, again.Advice().Unanswered?.Sheet));
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void It_confirms_no_setting_that_nobody_has_read(string way)
    {
        var never = With(Way(way)) with { Log = [Way(way)], Sheets = [Sheet(Sunday, 70)] };
        Assert.False(never.Advice().Confirmed);
    }

    [Fact]
    public void On_one_dial_it_answers_its_sheet_for_every_program_of_the_box()
    {
        var box = SmallCourse.Box with { Applies = PercentApplies.Controller, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "23:30")] };
        var sheet = Sheet(Sunday, 70);
        var both = With(NotTurned) with { Controller = box, Sheets = [sheet with { Lines = [.. sheet.Lines, sheet.Lines[0] with { Program = new ProgramKey("C1", "P2") }] }] };
        Assert.All(both.Sheet().Programs, p => Assert.Null(p.Unanswered));
    }

    private static SmallCourse With(params LogEntry[] more) => Asked with { Log = [.. Asked.Log, .. more] };

    private static LogEntry Way(string way) => way.StartsWith("no", StringComparison.Ordinal) ? NotTurned : NotDone;

    private static LogEntry Said(DateOnly date, TimeOnly at, double? percent) => new()
    {
        Time = new(date, at),
        Kind = LogKind.Setting,
        Where = Program,
        Value = percent,
        Unit = percent is null ? LogUnit.None : LogUnit.Percent,
    };

    private static IssuedSheet Sheet(DateOnly date, double percent) => new(date, 1, At(date, 5), [new IssuedLine(new ProgramKey("C1", "P1"), AdviceKind.Set, percent, Asks: true)]);

    private static DateTimeOffset At(DateOnly date, int hour) => new(date.ToDateTime(new(hour, 0)), TimeSpan.Zero);
}
