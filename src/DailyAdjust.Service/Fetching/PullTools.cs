using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Fetching;

/// <summary>What pulls work with.</summary>
public sealed record PullTools
{
    public required TimeProvider Time { get; init; }

    public required ILogger Log { get; init; }

    public HttpClient Http { get; init; } = PullClient.Shared;

    public PullLimits Limits { get; init; } = PullLimits.Usual;

    /// <summary>Looks up a variable of the environment.</summary>
    public Func<string, string?> Variable { get; init; } = Environment.GetEnvironmentVariable;
}
