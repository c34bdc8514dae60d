namespace DailyAdjust.Core.Weather;

/// <summary>What is forecast for one day to come. Nothing of it was measured, and none of its rain is ever booked.</summary>
/// <param name="Date">The site's calendar date.</param>
/// <param name="AirTemperatureMaxC">Highest, °C; null = too few hours are forecast.</param>
/// <param name="AirTemperatureMinC">Lowest, °C, at most the highest; null likewise.</param>
public sealed record ForecastDay(DateOnly Date, double? AirTemperatureMaxC, double? AirTemperatureMinC)
{
    /// <summary>Hours of the day whose temperature is forecast, 0 to 25.</summary>
    public double TemperatureHours { get; init; }

    /// <summary>The day's intervals with an amount or a chance of rain, ascending; of the running day what is still to come.</summary>
    public IReadOnlyList<RainAhead> Rain { get; init; } = [];

    /// <summary>All of <see cref="Rain"/>.</summary>
    public RainAhead? DayRain => RainAhead.Sum(Rain);

    /// <summary>The night that follows the day, as far as it is forecast.</summary>
    public ForecastNight Night { get; init; } = new(null, null, null);
}

/// <summary>What is forecast for a night.</summary>
/// <param name="LowestTemperatureC">°C; null = too few hours are forecast.</param>
/// <param name="HighestWindMPerS">The highest hourly mean, at the forecast's own height, m/s; null likewise.</param>
/// <param name="Rain">Its rain; null = no hour tells.</param>
public sealed record ForecastNight(double? LowestTemperatureC, double? HighestWindMPerS, RainAhead? Rain)
{
    /// <summary>The grass can be at 0 °C while the air at the height of a shelter is at this, °C (36 °F). Common practice.</summary>
    public const double FrostC = 2;

    /// <summary>Above this wind spray is carried off its target, m/s (11 mph). Common practice; a product's label may ask for less.</summary>
    public const double DriftMPerS = 5;

    public bool MayFreeze => LowestTemperatureC <= FrostC;

    public bool SprayMayDrift => HighestWindMPerS > DriftMPerS;
}

/// <summary>Rain that is forecast for a span of time.</summary>
/// <param name="Begin">UTC.</param>
/// <param name="End">UTC, after the begin.</param>
/// <param name="Mm">0 or more; null = no amount is forecast.</param>
/// <param name="ChancePercent">0 to 100, that of the likeliest interval in the span; null = no chance is forecast.</param>
public sealed record RainAhead(DateTimeOffset Begin, DateTimeOffset End, double? Mm, double? ChancePercent)
{
    /// <summary>The part of it between two instants, its amount spread evenly; null = none of it lies there.</summary>
    public RainAhead? Within(DateTimeOffset from, DateTimeOffset to)
    {
        var (begin, end) = (from > Begin ? from : Begin, to < End ? to : End);
        return begin >= end ? null : this with { Begin = begin, End = end, Mm = Mm * ((end - begin) / (End - Begin)) };
    }

    /// <summary>All amounts that are known, and the highest chance; null = nothing to add up.</summary>
    /// <param name="spans">Ascending, not overlapping.</param>
    public static RainAhead? Sum(IReadOnlyList<RainAhead> spans) => spans.Count == 0 ? null : new(
        spans[0].Begin,
        spans[^1].End,
        spans.Any(s => s.Mm is not null) ? spans.Sum(s => s.Mm ?? 0) : null,
        spans.Max(s => s.ChancePercent));
}
