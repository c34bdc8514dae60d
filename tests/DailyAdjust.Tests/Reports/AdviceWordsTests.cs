using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What a round line says of a dial of which nobody knows what it shows.</summary>
public class AdviceWordsTests
{
    [Theory]
    [InlineData(AdviceKind.Skip, AdviceKind.Set, 80d, "SKIP, 100 or 80 % → off")]
    [InlineData(AdviceKind.Skip, AdviceKind.Skip, null, "SKIP, 100 % or off → off")]
    [InlineData(AdviceKind.Off, AdviceKind.Set, 80d, "MUST NOT RUN, 100 or 80 % → off")]
    [InlineData(AdviceKind.Set, AdviceKind.Set, 80d, "SET 100 or 80 → 70 %")]
    public void It_shows_both_numbers_that_the_dial_may_be_at(AdviceKind today, AdviceKind asked, double? askedPercent, string line) =>
        Assert.Equal(line, AdviceWords.ActAndNumbers(Advice(today, 70) with { Unanswered = NotAnswered(asked, askedPercent, 60, 90) }).ToString());

    [Fact]
    public void A_number_that_neither_answer_gives_is_said_with_its_reason()
    {
        var advice = Advice(AdviceKind.Set, 70) with { Unanswered = NotAnswered(AdviceKind.Set, 80, 60, 60) };
        Assert.Equal(
            "Mon 8 June said: set 80 %. Nobody has answered. If it was done, today says: set 60 %. If not: set 60 %. The round says 70 %: until somebody answers, a number moves by no more than a step a day.",
            AdviceWords.NotAnswered(advice).ToString());
        Assert.DoesNotContain("The round says", AdviceWords.NotAnswered(advice with { Percent = 60 }).ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_two_ways_differ_the_line_says_what_the_round_does_meanwhile()
    {
        var set = Advice(AdviceKind.Set, 90) with
        {
            Unanswered = NotAnswered(AdviceKind.Set, 80, 60, 60) with { IfDone = new(AdviceKind.Set, 50), AsLogged = new(AdviceKind.Leave, 90) },
        };
        Assert.EndsWith("If it was done, today says: set 50 %. If not: leave it at 90 %. Until somebody answers, the round says 90 %.", AdviceWords.NotAnswered(set).ToString(), StringComparison.Ordinal);
        var skip = Advice(AdviceKind.Skip, 0) with
        {
            PauseDays = 2,
            Unanswered = NotAnswered(AdviceKind.Set, 80, 60, 60) with { IfDone = new(AdviceKind.Skip, null) { PauseDays = 1 }, AsLogged = new(AdviceKind.Leave, 90) },
        };
        Assert.EndsWith("today says: skip (pause 1 day). If not: leave it at 90 %. Until somebody answers, the round says: skip (pause 2 days).", AdviceWords.NotAnswered(skip).ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Reason.MayBeOff, "Reason.")]
    [InlineData("asked-again", "Make sure it is on at 100 %. Reason.")]
    public void Where_the_number_is_the_logbooks_the_line_says_to_look_once(string code, string line) => Assert.Equal(
        line,
        AdviceWords.ReasonAndUntil(
            Advice(AdviceKind.Set, 100) with
            {
                Reason = Phrase.Verbatim("Reason."),
                Chain = [new Reason(code, Phrase.Verbatim("Reason."), new Dictionary<string, double>())],
                Unanswered = NotAnswered(AdviceKind.Set, 80, 60, 60),
            },
            new SiteWords(UnitSystem.Metric, InventedMorning.Build().Site.Clock, new DateOnly(2026, 6, 9))).ToString());

    private static ProgramAdvice Advice(AdviceKind kind, double percent) => new()
    {
        Key = new ProgramKey("A", "P1"),
        Name = "",
        Present = new Setting(100),
        Confirmed = true,
        Advice = kind,
        Percent = kind == AdviceKind.Set ? percent : null,
        MayBeOn = true,
        Reason = Phrase.Empty,
        Zones = [],
    };

    private static UnansweredAdvice NotAnswered(AdviceKind asked, double? percent, double ifDone, double ifNot) =>
        new(new OpenRound(new DateOnly(2026, 6, 8), null), asked, percent, new AlternativeAdvice(AdviceKind.Set, ifDone), new AlternativeAdvice(AdviceKind.Set, ifNot));
}
