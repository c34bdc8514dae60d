using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Index;

/// <summary>What the page over all sites has to know of one.</summary>
public sealed record IndexSite
{
    /// <summary>The site's folder name: what commands call it, and where links go.</summary>
    public required string Id { get; init; }

    /// <summary>Its newest description; null = none was ever read without errors, or its records cannot be read.</summary>
    public Site? Site { get; init; }

    /// <summary>Why its records cannot be read; null = they can.</summary>
    public string? Trouble { get; init; }

    /// <summary>The newest date's newest issue; null = nothing was issued yet.</summary>
    public IndexSheet? Newest { get; init; }

    /// <summary>A morning later than the newest sheet that was slept over; null = there is none.</summary>
    public DateOnly? Missed { get; init; }

    /// <summary>Names of the pages of its summaries folder: "season-2026.html", "week-2026-07-06.html"; in any order.</summary>
    public IReadOnlyList<string> Summaries { get; init; } = [];

    /// <summary>Dates whose report.html lies in its folder, in any order.</summary>
    public IReadOnlyList<IndexDay> Days { get; init; } = [];
}

/// <summary>A site's newest sheet.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Issue">1, 2, ...</param>
/// <param name="Site">The description that it was made by.</param>
/// <param name="AdviceJson">Gives its advice.json as it was issued: of a thousand sites each is asked for in its turn.</param>
public sealed record IndexSheet(DateOnly Date, int Issue, Site Site, Func<ReadOnlyMemory<byte>> AdviceJson);

/// <summary>A date whose report.html lies in its folder.</summary>
/// <param name="Date">The sheet's date.</param>
/// <param name="Sheet">Its newest issue; null = the ledger does not know of it, or cannot be read.</param>
/// <param name="HasRound">round.csv lies beside it.</param>
public sealed record IndexDay(DateOnly Date, IssuedSheet? Sheet, bool HasRound);
