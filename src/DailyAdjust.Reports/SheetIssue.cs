namespace DailyAdjust.Reports;

/// <summary>Which sheet this is, and what the morning's work itself has to report.</summary>
public sealed record SheetIssue
{
    /// <summary>The site's folder name: what commands call it.</summary>
    public required string SiteId { get; init; }

    /// <summary>1, 2, ...; each later issue of a date replaces the one before.</summary>
    public required int Number { get; init; }

    /// <summary>The issue of the same date that this one replaces; null = it is the first.</summary>
    public int? Replaces { get; init; }

    /// <summary>Plain sentences about what failed or was refused (files, mail, a late start); empty = nothing.</summary>
    public IReadOnlyList<string> Notices { get; init; } = [];
}
