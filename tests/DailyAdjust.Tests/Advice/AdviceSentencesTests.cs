using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Advice;

/// <summary>Sentences that stand with a change and in the chain behind it.</summary>
public class AdviceSentencesTests
{
    [Fact]
    public void A_split_start_says_what_is_keyed_in_and_what_then_runs() => Assert.Equal(
        "More than the ground takes at once at Fairway 9: in place of each start key in 2, 200 min from the beginning of one to that of the next, each with 1/2 of the base minutes "
            + "(the longest then runs 28 min at 140 %). It may stay so: the water of a night is the same.",
        AdviceSentences.SplitAndAfter(Advice(140) with { InPlace = new(2, 200, 2, null), LongRuns = [new LongRun(new("B6", "4"), "Fairway 9", 56, new CycleAndSoak(2, 28, 63))] }).ToString());

    [Fact]
    public void A_number_at_its_end_says_what_is_needed_and_what_lacks() => Assert.Equal(
        "The dial ends at 150 %, 172 % is needed: 0.05 in or 6 min short a start.",
        AdviceSentences.NumberEnds(Advice(150) with { ExactPercent = 172.4, Shortfall = new(1.27, 6, DialEnds: true) }, UnitSystem.Us).ToString());

    [Theory]
    [InlineData(UnitSystem.Us, 0.1, "under 0.01 in")]
    [InlineData(UnitSystem.Us, 0.13, "0.01 in")]
    [InlineData(UnitSystem.Us, 0, "0.00 in")]
    [InlineData(UnitSystem.Metric, 0.04, "under 0.1 mm")]
    [InlineData(UnitSystem.Metric, 16.25, "16.3 mm")]
    public void A_depth_that_would_read_as_none_says_so_in_reasons_too(UnitSystem units, double mm, string said) => Assert.Equal(said, Words.Depth(units, mm).ToString());

    private static ProgramAdvice Advice(double percent) => new()
    {
        Key = new ProgramKey("B6", "C"),
        Name = "",
        Present = new Setting(100),
        Confirmed = true,
        Advice = AdviceKind.Set,
        Percent = percent,
        Reason = Phrase.Empty,
    };
}
