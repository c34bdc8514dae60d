namespace DailyAdjust.Service.Fetching;

public enum PullOutcome
{
    /// <summary>New bytes lie in the inbox.</summary>
    New,

    /// <summary>The server says so, or sent what is known.</summary>
    Unchanged,

    /// <summary>Today's file does not exist yet.</summary>
    NotYet,

    /// <summary>The file before it still lies in the inbox; it is asked for again later.</summary>
    Waiting,

    Failed,
}

/// <summary>What came of asking for one file.</summary>
/// <param name="Source">The source's id.</param>
/// <param name="Address">Without its query, which may hold a secret; empty where nothing was asked.</param>
/// <param name="Outcome">What came of it.</param>
/// <param name="What">A clause for a person.</param>
public sealed record PullResult(string Source, string Address, PullOutcome Outcome, string What);
