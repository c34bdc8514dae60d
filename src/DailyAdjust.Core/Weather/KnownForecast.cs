namespace DailyAdjust.Core.Weather;

/// <summary>One forecast as it was made.</summary>
/// <param name="Issued">When it was made, UTC: nothing before that instant could know it.</param>
/// <param name="Readings">What it says, ascending.</param>
public sealed record IssuedForecast(DateTimeOffset Issued, IReadOnlyList<Reading> Readings);

/// <summary>What is known of the days to come at an instant.</summary>
/// <param name="Issued">When the newest forecast in it was made, UTC.</param>
/// <param name="Readings">One per interval begin, ascending; empty where the newest forecast is too old to be used.</param>
public sealed record KnownForecast(DateTimeOffset Issued, IReadOnlyList<Reading> Readings)
{
    /// <summary>
    /// Joins the forecasts that had been made by an instant and are not too old: for every interval and value the one that was made last counts.
    /// </summary>
    /// <param name="inArrivalOrder">Of two made at the same instant the later arrival counts.</param>
    /// <param name="asOf">Forecasts made later are not looked at.</param>
    /// <param name="maxAge">The site's weather_max_age.</param>
    /// <returns>Null = none had been made by then.</returns>
    public static KnownForecast? Of(IEnumerable<IssuedForecast> inArrivalOrder, DateTimeOffset asOf, TimeSpan maxAge)
    {
        var made = inArrivalOrder.Where(f => f.Issued <= asOf).OrderBy(f => f.Issued).ToList();
        return made.Count == 0
            ? null
            : new(made[^1].Issued, ReadingMerge.Merge(made.Where(f => asOf - f.Issued <= maxAge).Select(f => f.Readings)));
    }
}
