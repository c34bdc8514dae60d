namespace DailyAdjust.Core.Sites;

/// <summary>
/// A watering rule of the place: dates on which irrigation may not start, hours in which it may not run, or a ceiling on the percentage.
/// Local rules come first: nothing in the program loosens one.
/// </summary>
public sealed record Restriction
{
    public required string Name { get; init; }

    /// <summary>First date; null = always has been.</summary>
    public DateOnly? From { get; init; }

    /// <summary>Last date, included; null = until further notice.</summary>
    public DateOnly? Until { get; init; }

    /// <summary>Area names; empty = every area.</summary>
    public IReadOnlyList<string> Areas { get; init; } = [];

    /// <summary>Dates on which no start is allowed; null = none. A night belongs to the date of its start.</summary>
    public WaterDays? DaysNotAllowed { get; init; }

    /// <summary>Hours in which nothing may run; null = none. May cross midnight. A start in them is taken out; a run that reaches into them is told.</summary>
    public WateringWindow? HoursNotAllowed { get; init; }

    /// <summary>The most that may run, percent of base minutes; 0 = must not run; null = no ceiling.</summary>
    public double? MostPercent { get; init; }

    public bool HoldsOn(DateOnly date) => (From is null || date >= From) && (Until is null || date <= Until);

    public bool Covers(Area area) => Areas.Count == 0 || Areas.Contains(area.Name, StringComparer.Ordinal);
}
