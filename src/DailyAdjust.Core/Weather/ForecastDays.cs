using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather.Checks;

namespace DailyAdjust.Core.Weather;

/// <summary>A forecast's intervals to the days and nights to come. Pure: the same inputs give the same days.</summary>
public static class ForecastDays
{
    /// <summary>From then on a day's night counts, on the site's clock.</summary>
    public static TimeOnly NightBegins { get; } = new(18, 0);

    /// <summary>Its end on the next date: after sunrise in any season in which turf is watered, and the night's lowest falls before sunrise.</summary>
    public static TimeOnly NightEnds { get; } = new(9, 0);

    /// <summary>A day's or a night's temperatures need this share of its hours, as a day of weather does of its intervals.</summary>
    private const double LeastShare = 0.9;

    /// <summary>The mean of a longer interval does not tell how hot or cold it became.</summary>
    private static readonly TimeSpan LongestOfAMean = TimeSpan.FromHours(1);

    /// <summary>The days from the sheet's date through the last one of which anything is forecast.</summary>
    /// <param name="site">The site on that date.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="asOf">Rain before it is no longer to come.</param>
    /// <param name="readings">Ascending; <see cref="KnownForecast.Readings"/>.</param>
    /// <param name="setAside">Takes the values that no weather can have.</param>
    public static IReadOnlyList<ForecastDay> Of(Site site, DateOnly date, DateTimeOffset asOf, IReadOnlyList<Reading> readings, ICollection<SetAsideValue> setAside)
    {
        var ahead = Clean(site, date, readings, setAside);
        var days = new List<ForecastDay>();
        if (ahead.Count > 0)
        {
            for (var last = site.Clock.DateOf(ahead[^1].Begin); date <= last; date = date.AddDays(1))
            {
                days.Add(Day(site, date, isRunning: days.Count == 0, asOf, ahead));
            }
        }

        return days;
    }

    private static ForecastDay Day(Site site, DateOnly date, bool isRunning, DateTimeOffset asOf, List<Reading> ahead)
    {
        var day = DaySpan.Of(site.Clock, date);
        var ofDay = ahead.Where(r => day.Holds(r.Begin)).ToList();

        // A forecast made before dawn knows nothing of the hours since midnight; the day's lowest falls near sunrise, its highest after it.
        var sunrise = Sun.Day(site, date).Sunrise;
        var from = isRunning && sunrise > day.Begin && sunrise < day.End ? sunrise : day.Begin;
        var evening = site.Clock.ToInstant(date, NightBegins);
        var morning = site.Clock.ToInstant(date.AddDays(1), NightEnds);
        return new ForecastDay(date, Extreme(ofDay, from, day.End, Highest, Math.Max), Extreme(ofDay, from, day.End, Lowest, Math.Min))
        {
            TemperatureHours = Covered(ofDay, day.Begin, day.End, Highest).TotalHours,
            Rain = [.. ofDay.Select(RainOf).OfType<RainAhead>().Select(r => r.Within(asOf, DateTimeOffset.MaxValue)).OfType<RainAhead>()],
            Night = new(
                LowestOfNight(ahead, evening, morning),
                Extreme(Fine(ahead, evening, morning), evening, morning, r => r.WindSpeedMPerS, Math.Max),
                RainAhead.Sum([.. ahead.Select(RainOf).OfType<RainAhead>().Select(r => r.Within(evening > asOf ? evening : asOf, morning)).OfType<RainAhead>()])),
        };
    }

    /// <summary>From its hours; of a forecast by the day it is the next date's lowest, which falls at the end of the night.</summary>
    private static double? LowestOfNight(List<Reading> ahead, DateTimeOffset evening, DateTimeOffset morning) =>
        Extreme(Fine(ahead, evening, morning), evening, morning, Lowest, Math.Min)
        ?? (ahead.Find(r => r.End - r.Begin > LongestOfAMean && r.Begin > evening && r.Begin < morning) is { } next ? Known(Lowest(next)) : null);

    private static List<Reading> Fine(List<Reading> ahead, DateTimeOffset from, DateTimeOffset to) =>
        [.. ahead.Where(r => r.End - r.Begin <= LongestOfAMean && r.Begin < to && r.End > from)];

    /// <summary>The largest or smallest value of a span; null where less than 90 % of it is known.</summary>
    private static double? Extreme(IReadOnlyList<Reading> readings, DateTimeOffset from, DateTimeOffset to, Func<Reading, double> value, Func<double, double, double> choose) =>
        Covered(readings, from, to, value) >= LeastShare * (to - from)
            ? readings.Select(value).Where(v => !double.IsNaN(v)).Aggregate(choose)
            : null;

    private static TimeSpan Covered(IReadOnlyList<Reading> readings, DateTimeOffset from, DateTimeOffset to, Func<Reading, double> value)
    {
        var covered = TimeSpan.Zero;
        foreach (var r in readings.Where(r => !double.IsNaN(value(r)) && r.Begin < to && r.End > from))
        {
            covered += (r.End < to ? r.End : to) - (r.Begin > from ? r.Begin : from);
        }

        return covered;
    }

    private static double Highest(Reading r) => Either(r.AirTemperatureMaxC, MeanOf(r), Math.Max);

    private static double Lowest(Reading r) => Either(r.AirTemperatureMinC, MeanOf(r), Math.Min);

    private static double MeanOf(Reading r) => r.End - r.Begin <= LongestOfAMean ? r.AirTemperatureC : double.NaN;

    private static double Either(double extreme, double mean, Func<double, double, double> choose) =>
        double.IsNaN(extreme) ? mean : double.IsNaN(mean) ? extreme : choose(extreme, mean);

    private static RainAhead? RainOf(Reading r) => double.IsNaN(r.RainMm) && double.IsNaN(r.RainChancePercent)
        ? null
        : new(r.Begin, r.End, Known(r.RainMm), Known(r.RainChancePercent));

    /// <summary>Readings of the date and later without what no weather can have; of two that overlap, the one that began first.</summary>
    private static List<Reading> Clean(Site site, DateOnly date, IReadOnlyList<Reading> readings, ICollection<SetAsideValue> setAside)
    {
        var kept = new List<Reading>();
        var begin = site.Clock.DayStart(date);
        if (site.Weather.Forecast is not { } source)
        {
            return kept;
        }

        foreach (var reading in readings.Where(r => r.Begin >= begin))
        {
            if (kept.Count > 0 && reading.Begin < kept[^1].End)
            {
                continue;
            }

            var notes = new CheckNotes(site, source, DaySpan.Of(site.Clock, site.Clock.DateOf(reading.Begin)));
            var clean = ValueChecks.Keep(reading, notes);
            foreach (var aside in notes.SetAside)
            {
                setAside.Add(aside);
            }

            if (clean.RainChancePercent is < 0 or > 100)
            {
                setAside.Add(new(WeatherSetup.ForecastId, clean.Begin, FormattableString.Invariant($"{QuantityName.Of(WeatherQuantity.RainChance)} {clean.RainChancePercent:0.###} %"), "outside 0 to 100 %"));
                clean = clean with { RainChancePercent = double.NaN };
            }

            kept.Add(clean);
        }

        return kept;
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
