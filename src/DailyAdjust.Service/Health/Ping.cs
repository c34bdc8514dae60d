using System.Net;
using DailyAdjust.Service.Fetching;
using Microsoft.Extensions.Logging;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace DailyAdjust.Service.Health;

/// <summary>Tells an address of the user's own that all mornings are done (setting PingUrl): one GET, whose answer only has to be a 2xx. Its path is kept out of the log, for such addresses are secrets.</summary>
public sealed class Ping(Uri address, TimeProvider time, ILogger log)
{
    private const int Repeats = 3;

    private static readonly TimeSpan FirstPause = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Limit = TimeSpan.FromSeconds(10);

    private readonly ResiliencePipeline _pipeline = new ResiliencePipelineBuilder { TimeProvider = time }
        .AddRetry(new RetryStrategyOptions
        {
            MaxRetryAttempts = Repeats,
            BackoffType = DelayBackoffType.Exponential,
            Delay = FirstPause,
            ShouldHandle = new PredicateBuilder().Handle<HttpRequestException>(IsPassing).Handle<TimeoutRejectedException>(),
        })
        .AddTimeout(Limit)
        .Build();

    /// <summary>Never throws for what the other side does: no morning hangs on it.</summary>
    /// <returns>Whether it was heard.</returns>
    public async Task<bool> SendAsync(CancellationToken stop)
    {
        try
        {
            await _pipeline.ExecuteAsync(AskAsync, stop).ConfigureAwait(false);
            log.LogDebug("{Host} was told that all mornings are done", address.Authority);
            return true;
        }
        catch (Exception failure) when (failure is HttpRequestException or TimeoutRejectedException)
        {
            log.LogWarning("{Host} could not be told that all mornings are done: {Failure}", address.Authority, failure.Message);
            return false;
        }
    }

    /// <summary>No answer, or one that may be another in a moment; an address that is wrong stays wrong.</summary>
    private static bool IsPassing(HttpRequestException failure) => failure.StatusCode is null or >= HttpStatusCode.InternalServerError;

    private async ValueTask AskAsync(CancellationToken stop)
    {
        using var question = new HttpRequestMessage(HttpMethod.Get, address);
        question.Headers.UserAgent.ParseAdd(PullClient.UserAgent);
        using var answer = await PullClient.Shared.SendAsync(question, HttpCompletionOption.ResponseHeadersRead, stop).ConfigureAwait(false);
        answer.EnsureSuccessStatusCode();
    }
}
