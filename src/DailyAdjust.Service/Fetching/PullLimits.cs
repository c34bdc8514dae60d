namespace DailyAdjust.Service.Fetching;

/// <summary>How stubbornly a source is asked, beside the time and size that its own `pull` allows for one answer.</summary>
public sealed record PullLimits
{
    public static PullLimits Usual { get; } = new();

    /// <summary>How often a question that failed is asked again within one pull.</summary>
    public int Retries { get; init; } = 3;

    /// <summary>Before the first repetition, on average; doubled for each later one.</summary>
    public TimeSpan FirstDelay { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>The longest that one pull pauses; a server that asks for more (Retry-After) is left alone until then.</summary>
    public TimeSpan LongestDelay { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>The longest Retry-After that is kept to.</summary>
    public TimeSpan LongestRest { get; init; } = TimeSpan.FromHours(1);

    /// <summary>After so many failures in a row the source is not asked for a while, 2 or more.</summary>
    public int BreakAfter { get; init; } = 8;

    /// <summary>For how long it is then not asked, 0.5 s or more.</summary>
    public TimeSpan Break { get; init; } = TimeSpan.FromMinutes(5);
}
