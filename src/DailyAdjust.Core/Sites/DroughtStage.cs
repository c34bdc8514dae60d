namespace DailyAdjust.Core.Sites;

/// <summary>A stage of the site's drought plan: it holds while a `stage` entry of the logbook puts it in force.</summary>
public sealed record DroughtStage
{
    public required string Name { get; init; }

    /// <summary>Dates on which no start is allowed; null = none.</summary>
    public WaterDays? DaysNotAllowed { get; init; }

    /// <summary>Hours in which nothing may run; null = none. May cross midnight.</summary>
    public WateringWindow? HoursNotAllowed { get; init; }

    /// <summary>The most water of the whole site, percent of what its base minutes bring, 0 to 100; null = no limit.</summary>
    public double? MostPercent { get; init; }

    /// <summary>Areas that are cut first, in this order; the others only when these are not enough.</summary>
    public IReadOnlyList<string> CutOrder { get; init; } = [];
}
