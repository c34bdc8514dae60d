using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Tests.Explain;
using DailyAdjust.Tests.Irrigation;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>
/// A grow-in on a program that was off when it was ordered: 6 starts of 4 min from Monday 04:00 through Thursday, in the place of an hour at 22:00. Until
/// the logbook says that it is on, nothing ran.
/// </summary>
public class GrowInWhileOffTests
{
    private static readonly DateOnly Monday = SmallCourse.Monday;
    private static readonly Place Program = new(PlaceKind.Program, "C1", "P1");
    private static readonly LogEntry Off = At(-1, 9) with { Kind = LogKind.Off };
    private static readonly LogEntry Leaks = Off with { Note = "valve leaks" };
    private static readonly LogEntry GrowIn = At(0, 4) with { Kind = LogKind.GrowIn, Times = 6, Value = 4, Unit = LogUnit.Minutes, Until = new(Monday.AddDays(3), null) };

    [Fact]
    public void Off_for_no_noted_reason_it_is_asked_for_every_morning_and_did_not_run_until_somebody_says_that_it_is_on()
    {
        var tuesday = On(1, Off, GrowIn).Sheet();
        Assert.Equal((AdviceKind.Resume, 100d), (tuesday.Programs[0].Advice, tuesday.Programs[0].Percent!.Value));
        Assert.Empty(tuesday.DueRuns);

        // The sheet of Monday asked for it, and nobody answered: that does not make it run either.
        var silent = (On(1, Off, GrowIn) with { Sheets = [Asked(0, 100)] }).Sheet();
        Assert.Equal((AdviceKind.Resume, 100d), (silent.Programs[0].Advice, silent.Programs[0].Percent!.Value));
        Assert.Empty(silent.DueRuns);

        // Turned on at Monday 10:00: the four starts from 11:00 on.
        var done = On(1, Off, GrowIn, At(0, 10) with { Kind = LogKind.Setting, Value = 100, Unit = LogUnit.Percent }).Sheet();
        Assert.Equal(AdviceKind.Leave, done.Programs[0].Advice);
        Assert.Equal([11, 13, 15, 17], done.DueRuns.Select(d => d.Start.Hour));
    }

    [Fact]
    public void The_balance_books_nothing_before_that()
    {
        double[] Irrigation(params LogEntry[] log) =>
        [
            .. OneZone.Run(OneZone.Site(OneZone.Area, controller: SmallCourse.Box), [.. Enumerable.Range(0, 6).Select(n => OneZone.Day(n, 0))], 40, log)
                .Where(d => d.Date >= Monday).Select(d => d.IrrigationMm),
        ];

        Assert.Equal([0, 0, 0], Irrigation(Off, GrowIn));
        Assert.Equal([0, 0, 0], Irrigation(Leaks, GrowIn));

        // On from Tuesday 13:30, half an hour a start of its own: 24 minutes a day on Monday, 25.5 in 5 starts of 5 from Tuesday's round on: those of 14:12 and 16:36. 10 mm an hour.
        var turnedOn = Irrigation(Off, GrowIn, At(1, 13) with { Time = new(Monday.AddDays(1), new(13, 30)), Kind = LogKind.Setting, Value = 100, Unit = LogUnit.Percent });
        Assert.Equal(0, turnedOn[0]);
        Assert.Equal(10 / 6.0, turnedOn[1], 9);
        Assert.True(turnedOn[2] > turnedOn[1], string.Join(' ', turnedOn));
    }

    [Fact]
    public void Off_said_after_its_order_stops_it_though_it_was_off_before()
    {
        Assert.Equal(AdviceKind.KeepOff, On(1, Off, GrowIn, At(0, 15) with { Kind = LogKind.Off }).Advice().Advice);

        // Also in the very minute of the sheet.
        Assert.Equal(AdviceKind.KeepOff, On(1, Off, GrowIn, At(1, 5) with { Kind = LogKind.Off }).Advice().Advice);

        // Found off on the round: nobody has turned it on yet.
        Assert.Equal(AdviceKind.Resume, On(1, Off, GrowIn, At(0, 13) with { Kind = LogKind.Setting, Value = 0, Unit = LogUnit.Percent, Sheet = Monday, Issue = 1 }).Advice().Advice);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(3)]
    public void A_noted_fault_is_asked_about_and_the_grow_in_turns_nothing_on(int day)
    {
        foreach (var (note, log) in new (string, LogEntry[])[]
        {
            ("valve leaks", [Leaks, GrowIn]),
            ("valve leaks", [Off, At(-1, 10) with { Note = "valve leaks" }, GrowIn]),
            ("not mended yet", [Leaks, At(-1, 11) with { Note = "not mended yet" }, GrowIn]),
        })
        {
            var sheet = On(day, log).Sheet();
            var advice = sheet.Programs[0];
            Assert.Equal((AdviceKind.KeepOff, note, false), (advice.Advice, advice.Fault!.Note, advice.NeedsVisit));
            Assert.Equal($"Off since Sun 3 May, \"{note}\": is that mended or over? A setting in the logbook, or the entry `checked` for box C1, hands it back to its grow-in.", advice.Reason.ToString());
            Assert.Empty(sheet.DueRuns);
            Assert.Single(sheet.Exceptions.GrowIns);
        }
    }

    [Fact]
    public void Off_with_a_note_since_it_began_is_asked_about_too_and_handed_back_once_that_is_answered()
    {
        LogEntry[] log = [GrowIn, Leaks with { Time = new(Monday, new(15, 0)) }];
        var advice = On(1, log).Advice();
        Assert.Equal((AdviceKind.KeepOff, "valve leaks"), (advice.Advice, advice.Fault!.Note));
        Assert.Equal(AdviceKind.Resume, On(1, [.. log, At(0, 16) with { Note = "mended" }]).Advice().Advice);
        Assert.Equal(AdviceKind.Resume, On(1, [.. log, At(0, 16) with { Kind = LogKind.Checked, Where = new(PlaceKind.Controller, "C1", "") }]).Advice().Advice);

        // Without a note somebody ended it.
        var ended = On(1, GrowIn, Off with { Time = new(Monday, new(15, 0)) }).Advice();
        Assert.Equal((AdviceKind.KeepOff, "Grow-in through Thu 7 May, but it was turned off since its order: a setting above 0 takes it up again."), (ended.Advice, ended.Reason.ToString()));
    }

    [Fact]
    public void Once_it_is_mended_or_the_box_is_checked_the_grow_in_turns_it_on()
    {
        var mended = On(1, Leaks, GrowIn, At(0, 15) with { Note = "mended" }).Advice();
        Assert.Equal((AdviceKind.Resume, null), (mended.Advice, mended.Fault));
        Assert.StartsWith("Off since Sun 3 May, \"valve leaks\"; noted on C1/P1 since, Mon 4 May: \"mended\". Grow-in through Thu 7 May", mended.Reason.ToString(), StringComparison.Ordinal);
        Assert.Equal(AdviceKind.Resume, On(1, Leaks, GrowIn, At(0, 15) with { Kind = LogKind.Checked, Where = new(PlaceKind.Controller, "C1", "") }).Advice().Advice);
    }

    [Fact]
    public void After_its_end_the_fault_is_still_asked_about()
    {
        var kept = On(4, Off, At(-1, 10) with { Note = "valve leaks" }, GrowIn).Sheet();
        Assert.True(Assert.Single(kept.Exceptions.GrowIns).IsOver);
        Assert.Equal((AdviceKind.KeepOff, "valve leaks"), (kept.Programs[0].Advice, kept.Programs[0].Fault!.Note));
        var asked = On(4, Leaks, GrowIn).Advice();
        Assert.Equal((AdviceKind.Resume, "valve leaks"), (asked.Advice, asked.Fault!.Note));
        Assert.StartsWith("Off since Sun 3 May, \"valve leaks\": turn it on only if that is mended or over. ", asked.Reason.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_explained_by_the_rule_that_decides_and_after_its_end_with_the_same_numbers()
    {
        Assert.Contains(Explained(On(1, Leaks, GrowIn)), s => s.Name is "rule 2, off with a note of what is wrong: keep off? yes");
        Assert.Contains(Explained(On(1, Off, GrowIn)), s => s.Name is "rule 3, grow-in: leave? yes");
        Assert.True(ProgramStepsTests.Followed(On(4, Leaks, GrowIn).Inputs(), []) > 10);
    }

    private static IEnumerable<Step> Explained(SmallCourse course) => ProgramSteps.Of(course.Inputs(), course.Sheet(), new("C1", "P1")).SelectMany(s => s.Steps);

    private static SmallCourse On(int day, params LogEntry[] log) => SmallCourse.OneStation(60) with { Date = Monday.AddDays(day), Log = log };

    private static IssuedSheet Asked(int day, double percent) => new(
        Monday.AddDays(day), 1, new DateTimeOffset(Monday.AddDays(day).ToDateTime(new(5, 0)), TimeSpan.Zero), [new IssuedLine(new("C1", "P1"), AdviceKind.Resume, percent, Asks: true)]);

    private static LogEntry At(int day, int hour) => new() { Time = new(Monday.AddDays(day), new(hour, 0)), Kind = LogKind.Note, Where = Program };
}
