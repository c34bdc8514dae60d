using DailyAdjust.Core.Replay;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Replay;

/// <summary>What stands below the table of a replay.</summary>
public sealed class ReplayWordsTests
{
    [Fact]
    public void Where_perfect_knowledge_meets_less_than_the_fixed_program_it_is_said_why()
    {
        Assert.Equal(
            "Adequacy of perfect is below that of fixed on rough: perfect keeps the ground within the allowable and gives no more, nor more at once than soaks in, so it has no reserve where one start is not enough; fixed overfills (excess 35 %) and has one.",
            Words(perfect: (99.2, 98.7), @fixed: (99.1, 100)));
        Assert.StartsWith("Adequacy of perfect is below that of fixed on the site and rough: ", Words((98.7, 98.7), (99, 100)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(100, 100)]
    [InlineData(99.5, 99.4)]
    [InlineData(99.501, 99.504)] // printed alike
    public void Where_it_does_not_nothing_is_said(double perfect, double @fixed) => Assert.Empty(Words((perfect, perfect), (@fixed, @fixed)));

    /// <summary>The excess is what the sentence rests on: it is that of the ground it speaks of, and none as printed says nothing.</summary>
    [Theory]
    [InlineData(10, 0.3, 99.2, "")]
    [InlineData(10, 0.5, 99.2, "on rough", "(excess 1 %)")]
    [InlineData(0.3, 80, 98.7, "on rough", "(excess 80 %)")]
    [InlineData(60.2, 80, 98.7, "on the site and rough", "(excess 60 % on the site, 80 % on rough)")]
    [InlineData(60.2, 0, 98.7, "on the site", "(excess 60 %)")]
    public void It_is_said_only_of_ground_that_fixed_overfills(double site, double rough, double perfectOnSite, params string[] said)
    {
        var words = Words((perfectOnSite, 98.7), (99.1, 100), (site, rough));
        Assert.All(said, part => Assert.Contains(part, words, StringComparison.Ordinal));
        Assert.Equal(said[0].Length == 0, words.Length == 0);
        Assert.DoesNotContain("excess 0 %", words, StringComparison.Ordinal);
    }

    private static string Words((double Site, double Rough) perfect, (double Site, double Rough) @fixed, (double Site, double Rough)? excess = null) => ReplayWords.PerfectBelowFixed(
        new ReplayResult(new(2026, 4, 1), new(2026, 9, 30), [Of(ReplayPolicy.Fixed, @fixed, excess ?? (35.45, 35.45)), Of(ReplayPolicy.Perfect, perfect, (0, 0))]));

    private static PolicyResult Of(ReplayPolicy policy, (double Site, double Rough) adequacy, (double Site, double Rough) excess) =>
        new(policy, Figures(adequacy.Site, excess.Site), 0, 0, [], [new("greens", Figures(100, excess.Site)), new("rough", Figures(adequacy.Rough, excess.Rough))], []);

    private static ReplayFigures Figures(double adequacy, double excess) => new()
    {
        AdequacyPercent = adequacy,
        ExcessPercent = excess,
        WaterMm = 0,
        NetMm = 0,
        DrainageMm = 0,
        RunoffMm = 0,
        RainRunoffMm = 0,
        StressDays = 0,
        EtcMm = 0,
    };
}
