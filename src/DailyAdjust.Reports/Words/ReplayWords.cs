using DailyAdjust.Core.Replay;

namespace DailyAdjust.Reports.Words;

/// <summary>The words that files use for ways to water.</summary>
internal static class ReplayWords
{
    public static string Of(ReplayPolicy policy) => policy switch
    {
        ReplayPolicy.Advice => "advice",
        ReplayPolicy.Fixed => "fixed",
        ReplayPolicy.Perfect => "perfect",
        ReplayPolicy.Refill => "refill",
        _ => throw new ArgumentOutOfRangeException(nameof(policy), policy, "Not a way to water."),
    };
}
