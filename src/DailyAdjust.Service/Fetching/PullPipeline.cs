using DailyAdjust.Core.Sites;
using Polly;
using Polly.CircuitBreaker;
using Polly.Retry;
using Polly.Timeout;

namespace DailyAdjust.Service.Fetching;

/// <summary>How one source's server is asked: a time limit for each question, a few repetitions, and a pause after many failures.</summary>
internal static class PullPipeline
{
    /// <summary>Failures that lie further apart are not "in a row".</summary>
    private static readonly TimeSpan ShortestSampling = TimeSpan.FromMinutes(10);

    /// <summary>The library's own limit: a source that is asked less than three times a day is never left alone.</summary>
    private static readonly TimeSpan LongestSampling = TimeSpan.FromDays(1);

    /// <param name="pull">Its time limit and interval.</param>
    /// <param name="limits">How stubbornly.</param>
    /// <param name="time">The clock.</param>
    /// <param name="hand">Closes the circuit when a person or the morning's work asks.</param>
    public static ResiliencePipeline<PullAnswer> Of(Pull pull, PullLimits limits, TimeProvider time, CircuitBreakerManualControl hand) =>
        new ResiliencePipelineBuilder<PullAnswer> { TimeProvider = time }
            .AddRetry(new RetryStrategyOptions<PullAnswer>
            {
                MaxRetryAttempts = limits.Retries,
                BackoffType = DelayBackoffType.Exponential,
                UseJitter = true,
                Delay = limits.FirstDelay,
                MaxDelay = limits.LongestDelay,
                ShouldHandle = args => ValueTask.FromResult(IsWorthAsking(args.Outcome.Exception, limits)),
                DelayGenerator = args => ValueTask.FromResult(AskedFor(args.Outcome.Exception)),
            })
            .AddCircuitBreaker(new CircuitBreakerStrategyOptions<PullAnswer>
            {
                FailureRatio = 1,
                MinimumThroughput = limits.BreakAfter,
                SamplingDuration = TimeSpan.FromTicks(Math.Clamp(pull.Every.Ticks * 3, ShortestSampling.Ticks, LongestSampling.Ticks)),
                BreakDuration = limits.Break,
                ManualControl = hand,
                ShouldHandle = args => ValueTask.FromResult(args.Outcome.Exception is PullException or TimeoutRejectedException),
            })
            .AddTimeout(new TimeoutStrategyOptions { Timeout = pull.Timeout })
            .Build();

    private static bool IsWorthAsking(Exception? failure, PullLimits limits) => failure switch
    {
        TimeoutRejectedException => true,
        PullException told => told.Passing && !(told.RetryAfter > limits.LongestDelay),
        _ => false,
    };

    /// <summary>Null = the usual delay.</summary>
    private static TimeSpan? AskedFor(Exception? failure) =>
        failure is PullException { RetryAfter: { } wait } && wait > TimeSpan.Zero ? wait : null;
}
