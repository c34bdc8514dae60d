namespace DailyAdjust.Core.Sites;

/// <summary>What a place may take, as its allotment and its permit say; null = no limit of that kind.</summary>
public sealed record WaterLimits
{
    /// <summary>The month in which the year of allotment and permit begins, 1 to 12.</summary>
    public int YearBegins { get; init; } = 1;

    /// <summary>What is allotted a year, L.</summary>
    public double? AllotmentL { get; init; }

    /// <summary>What the permit allows a day, L.</summary>
    public double? DayL { get; init; }

    /// <summary>A calendar month, L.</summary>
    public double? MonthL { get; init; }

    /// <summary>A year, L.</summary>
    public double? YearL { get; init; }

    /// <summary>At once, L/min.</summary>
    public double? RateLPerMin { get; init; }

    /// <summary>Something is limited by the year.</summary>
    public bool HasYear => AllotmentL is not null || YearL is not null;

    /// <summary>The first date of the year in which a date lies.</summary>
    public DateOnly YearOf(DateOnly date) => new(date.Month >= YearBegins ? date.Year : date.Year - 1, YearBegins, 1);
}
