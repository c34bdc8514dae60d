using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Water;

/// <summary>Where the water of a span went, estimated from minutes and flow; metered water stands apart.</summary>
public sealed record WaterBooks
{
    /// <summary>The first date.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last date of which the balance is known.</summary>
    public required DateOnly To { get; init; }

    /// <summary>One for every date.</summary>
    public required IReadOnlyList<DayWater> Days { get; init; }

    /// <summary>In walking order; what was started by hand, if any, last.</summary>
    public required IReadOnlyList<ProgramWater> Programs { get; init; }

    /// <summary>In the order of site.yaml.</summary>
    public required IReadOnlyList<AreaWater> Areas { get; init; }

    /// <summary>Null = no meter tells.</summary>
    public MeteredWater? Metered { get; init; }

    /// <summary>The same from reading to reading, by date of the later; a total that fell is below 0. Empty = no meter was read twice.</summary>
    public IReadOnlyList<MeteredWater> MeterSteps { get; init; } = [];

    /// <summary>In the order allotment, day, month, year, rate; those that the site has.</summary>
    public IReadOnlyList<LimitUse> Limits { get; init; } = [];

    /// <summary>Stations whose water is in none of the figures.</summary>
    public int StationsWithoutFlow { get; init; }

    /// <summary>The same dates a year before; null = the balance does not reach back so far.</summary>
    public WaterBooks? YearBefore { get; init; }

    /// <summary>Estimated, L.</summary>
    public double EstimatedL => Days.Sum(d => d.EstimatedL);

    /// <summary>Estimated to have been left out after a skip, L.</summary>
    public double SavedL => Programs.Sum(p => p.SavedL);
}

/// <summary>One day's water.</summary>
/// <param name="Date">Of the balance.</param>
/// <param name="EstimatedL">All programs and what was started by hand, L.</param>
/// <param name="EtoMm">Reference ET, mm.</param>
/// <param name="RainMm">Of the site's first gauge, mm; null = unknown.</param>
public sealed record DayWater(DateOnly Date, double EstimatedL, double EtoMm, double? RainMm)
{
    /// <summary>Of a day whose reference ET is known.</summary>
    public static DayWater Of(WeatherDay day, double estimatedL) => new(day.Date, estimatedL, day.EtoMm!.Value, day.Rain.Count > 0 ? day.Rain[0].RainMm : null);
}

/// <summary>One program's water.</summary>
/// <param name="Program">Null = started by hand.</param>
/// <param name="Name">As site.yaml calls it; empty where it has none.</param>
/// <param name="EstimatedL">L.</param>
/// <param name="Skips">Sheets that said skip where the sheet before did not.</param>
/// <param name="SavedL">What its starts would have run at the percentage before, where a skip was followed, L.</param>
public sealed record ProgramWater(ProgramKey? Program, string Name, double EstimatedL, int Skips, double SavedL);

/// <summary>One area's water; means are by ground (by station where a station's ground is not known).</summary>
/// <param name="Area">Its name.</param>
/// <param name="EstimatedL">L.</param>
/// <param name="IrrigationMm">Net of losses, with hose, mm.</param>
/// <param name="DrainedMm">Rain and irrigation that went below the roots, mm.</param>
/// <param name="DaysBeyond">Days that ended beyond the allowable depletion, mean of its zones.</param>
/// <param name="WorstZone">The zone with the most such days; empty = none had one.</param>
/// <param name="WorstDays">How many it had.</param>
public sealed record AreaWater(string Area, double EstimatedL, double IrrigationMm, double DrainedMm, double DaysBeyond, string WorstZone, int WorstDays);

/// <summary>What a limit is on.</summary>
public enum LimitKind
{
    Allotment,
    Day,
    Month,
    Year,
    Rate,
}

/// <summary>Water used against a limit.</summary>
/// <param name="Kind">What it is on.</param>
/// <param name="Limit">L, of a rate L/min.</param>
/// <param name="From">The first date counted: of the year, of the month, of the worst day.</param>
/// <param name="Used">The most used of it in the span, L (year and allotment: since <paramref name="From"/>); of a rate the most asked at once, L/min.</param>
/// <param name="IsMetered">The meter's figure; otherwise the estimate.</param>
/// <param name="Over">Days, months or years of the span in which it was passed; of a rate days.</param>
public sealed record LimitUse(LimitKind Kind, double Limit, DateOnly From, double Used, bool IsMetered, int Over);
