using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>What days of weather are a function of.</summary>
public sealed record WeatherDayInputs
{
    /// <summary>Ascending by date; the first holds for earlier dates too. At least one.</summary>
    public required IReadOnlyList<SiteVersion> Versions { get; init; }

    /// <summary>The first date to compute.</summary>
    public required DateOnly From { get; init; }

    /// <summary>The last date to compute.</summary>
    public required DateOnly Through { get; init; }

    /// <summary>By weather station; ascending by begin, reaching from 30 hours before <see cref="From"/> to 3 hours after <see cref="Through"/>.</summary>
    public required IReadOnlyDictionary<string, IReadOnlyList<Reading>> Readings { get; init; }

    /// <summary>In order of arrival; voided and superseded entries removed.</summary>
    public required IReadOnlyList<LogEntry> Log { get; init; }

    /// <summary>The 45 days before <see cref="From"/> as far as there are any, in order of date: the mean of known days.</summary>
    public IReadOnlyList<WeatherDay> Before { get; init; } = [];

    /// <summary>The instant whose knowledge counts, UTC: readings that end later and entries of a later instant are not used.</summary>
    public required DateTimeOffset AsOf { get; init; }
}

/// <summary>The newest reading that carries any value.</summary>
/// <param name="Station">Its weather station.</param>
/// <param name="End">End of its interval, UTC.</param>
public sealed record NewestReading(string Station, DateTimeOffset End);
