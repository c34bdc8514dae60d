namespace DailyAdjust.Service.Fetching;

/// <summary>Why a question brought no file; the message is a clause that a sheet can show: "the server answers 500".</summary>
/// <param name="why">The clause.</param>
/// <param name="passing">It may work when it is asked again in a moment.</param>
public sealed class PullException(string why, bool passing, Exception? inner = null) : Exception(why, inner)
{
    public bool Passing { get; } = passing;

    /// <summary>The HTTP status, if there was an answer that is not 200.</summary>
    public int? Status { get; init; }

    /// <summary>How long the server wants to be left alone; null = it does not say.</summary>
    public TimeSpan? RetryAfter { get; init; }
}
