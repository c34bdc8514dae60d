using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>A box with one dial and two programs: the number of one is the number of both, and being off is each one's own.</summary>
public class OneDialTests
{
    private static readonly ProgramKey One = new("C1", "P1");
    private static readonly ProgramKey Two = new("C1", "P2");
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly DateOnly Sunday = Monday.AddDays(-1);

    [Theory]
    [InlineData(PercentApplies.Controller, 60, true)]
    [InlineData(PercentApplies.Program, 100, false)]
    public void A_number_of_one_program_is_on_the_dial_of_both(PercentApplies applies, double other, bool confirmed)
    {
        var history = History(applies, [Said(8, One, 60)]);
        Assert.Equal((60, true), Now(history, One));
        Assert.Equal((other, confirmed), Now(history, Two));
    }

    [Fact]
    public void The_last_number_counts_whichever_program_it_was_said_of()
    {
        var history = History(PercentApplies.Controller, [Said(8, One, 60), Said(9, Two, 80), Said(10, One, 70)]);
        Assert.Equal(((70, true), (70, true)), (Now(history, One), Now(history, Two)));
        Assert.Equal(80, history.At(One, At(Sunday, 9)).Setting.Percent);
    }

    [Theory]
    [InlineData(LogKind.Off)]
    [InlineData(LogKind.Setting)] // to 0
    public void Off_is_its_own_and_a_number_of_the_other_does_not_turn_it_on(LogKind kind)
    {
        var off = new LogEntry { Time = new(Sunday, new(9, 0)), Kind = kind, Where = Place(One), Value = kind == LogKind.Off ? null : 0 };
        var history = History(PercentApplies.Controller, [Said(8, Two, 90), off, Said(10, Two, 60)]);
        Assert.Equal(((0, true), (60, true)), (Now(history, One), Now(history, Two)));
        Assert.Equal(At(Sunday, 9), history.OffSince(One, At(Monday, 0)));

        // Its starts put in again, it runs at what the dial shows.
        Assert.Equal(60, history.LastRunning(One, At(Monday, 0)).Percent);
    }

    [Fact]
    public void A_pause_of_one_goes_on_and_then_it_runs_at_the_dials_new_number()
    {
        var pause = new LogEntry { Time = new(Sunday, new(9, 0)), Kind = LogKind.Pause, Where = Place(One), Value = 1440, Unit = LogUnit.Minutes };
        var history = History(PercentApplies.Controller, [Said(8, One, 90), pause, Said(10, Two, 60)]);
        Assert.Equal((0d, At(Monday, 9)), (history.At(One, At(Monday, 8)).Setting.Percent, history.At(One, At(Monday, 8)).PausedUntil!.Value));
        Assert.Equal(60, history.At(One, At(Monday, 9)).Setting.Percent);
    }

    [Fact]
    public void What_the_dial_cannot_show_counts_for_neither()
    {
        var history = History(PercentApplies.Controller, [Said(8, One, 60), Said(9, Two, 500)]);
        Assert.Equal(((60, true), (60, true)), (Now(history, One), Now(history, Two)));
    }

    [Fact]
    public void The_description_of_the_day_says_whether_there_is_one_dial()
    {
        var (one, each) = (Site(PercentApplies.Controller), Site(PercentApplies.Program));
        SiteVersion[] versions = [new(one.Start, one), new(Monday, each)];
        var before = new SettingHistory(versions, [Said(8, One, 60)], []);
        var after = new SettingHistory(versions, [Said(8, One, 60) with { Time = new(Monday, new(8, 0)) }], []);
        Assert.Equal((60, true), Now(before, Two));
        Assert.Equal(100, after.At(Two, At(Monday, 9)).Setting.Percent);
    }

    [Fact]
    public void A_round_done_but_for_one_program_turned_the_dial_of_both()
    {
        IssuedSheet sheet = new(Sunday, 1, At(Sunday, 5), [new(One, AdviceKind.Set, 70, Asks: true), new(Two, AdviceKind.Set, 70, Asks: true)]);
        LogEntry round = new() { Time = new(Sunday, new(12, 0)), Kind = LogKind.Round, Where = new(PlaceKind.Site, "", ""), Sheet = Sunday, Except = [Place(Two)] };
        var history = History(PercentApplies.Controller, [round], sheet);
        Assert.Equal(((70, true), (70, true)), (Now(history, One), Now(history, Two)));
        var box = History(PercentApplies.Controller, [round with { Except = [new(PlaceKind.Controller, "C1", "")] }], sheet);
        Assert.Equal(((100, false), (100, false)), (Now(box, One), Now(box, Two))); // nobody read it
    }

    [Fact]
    public void An_answer_to_one_row_answers_the_dial_and_not_what_was_to_be_switched()
    {
        LogEntry yes = Said(13, One, 70) with { Sheet = Sunday, Issue = 1 };
        Assert.All(Answered(AdviceKind.Set).Programs, p => Assert.Null(p.Unanswered));
        Assert.Equal(new AdviceKind?[] { null, AdviceKind.Skip }, Answered(AdviceKind.Skip).Programs.Select(p => p.Unanswered?.Kind));

        Core.Morning.MorningSheet Answered(AdviceKind other) => (Course(PercentApplies.Controller) with
        {
            Sheets = [new(Sunday, 1, At(Sunday, 5), [new(One, AdviceKind.Set, 70, Asks: true), new(Two, other, other == AdviceKind.Set ? 70 : null, Asks: true)])],
            Log = [yes],
        }).Sheet();
    }

    [Fact]
    public void The_reason_names_the_zone_that_made_the_number_whichever_program_it_is_of()
    {
        var programs = Course(PercentApplies.Controller).Sheet().Programs;
        Assert.All(programs, p => Assert.Equal((AdviceKind.Set, 200d), (p.Advice, p.Percent!.Value)));
        Assert.Contains(": C1/2 (P2, on the same dial) will be 64.0 mm below full", programs[0].Reason.ToString(), StringComparison.Ordinal);
        Assert.Contains(": C1/2 will be 64.0 mm below full", programs[1].Reason.ToString(), StringComparison.Ordinal);
        Assert.All(programs, p => Assert.Equal(44, p.Shortfall!.DepthMm, 0.01)); // 64 mm at 10 mm an hour, the dial gives 20
        Assert.Contains(": C1/2 will be 64.0 mm below full", Course(PercentApplies.Program).Sheet().Programs[1].Reason.ToString(), StringComparison.Ordinal); // a dial of its own
    }

    /// <summary>P1's station needs 150 %, P2's 640 %.</summary>
    private static SmallCourse Course(PercentApplies applies) => new()
    {
        Controller = SmallCourse.Box with { Applies = applies, Programs = [SmallCourse.EveryNight("P1", "22:00"), SmallCourse.EveryNight("P2", "22:00")] },
        Stations = [SmallCourse.Station(1, programs: "P1"), SmallCourse.Station(2, programs: "P2")],
        DepletionMm = [10, 60],
    };

    private static Site Site(PercentApplies applies) => Course(applies).Site;

    private static SettingHistory History(PercentApplies applies, IReadOnlyList<LogEntry> log, params IssuedSheet[] sheets) =>
        new([new SiteVersion(Site(applies).Start, Site(applies))], log, sheets);

    private static (double, bool) Now(SettingHistory history, ProgramKey program) =>
        (history.At(program, At(Sunday, 23)).Setting.Percent, history.At(program, At(Sunday, 23)).Confirmed);

    private static LogEntry Said(int hour, ProgramKey program, double percent) =>
        new() { Time = new(Sunday, new(hour, 0)), Kind = LogKind.Setting, Where = Place(program), Value = percent, Unit = LogUnit.Percent };

    private static Place Place(ProgramKey program) => new(PlaceKind.Program, program.Controller, program.Program);

    private static DateTimeOffset At(DateOnly date, int hour) => new(date.ToDateTime(new(hour, 0)), TimeSpan.Zero);
}
