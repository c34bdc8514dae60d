using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Irrigation;

/// <summary>Depletion of every station at 00:00 of a date, mm: all that is carried from day to day.</summary>
public sealed record SoilState(DateOnly Date, IReadOnlyDictionary<StationKey, double> DepletionMm);

/// <summary>What the balance is a function of.</summary>
public sealed record BalanceInputs
{
    /// <summary>Ascending by date; the first holds from its site's start.</summary>
    public required IReadOnlyList<SiteVersion> Versions { get; init; }

    /// <summary>Consecutive days from the first one to run; none of them open.</summary>
    public required IReadOnlyList<WeatherDay> Weather { get; init; }

    /// <summary>In order of arrival; voided and superseded entries removed.</summary>
    public required IReadOnlyList<LogEntry> Log { get; init; }

    /// <summary>Every sheet issued so far.</summary>
    public IReadOnlyList<IssuedSheet> Sheets { get; init; } = [];

    /// <summary>Depletion at 00:00 of the first weather day; null = the first day is the site's start.</summary>
    public SoilState? StartState { get; init; }
}

/// <summary>Zone days in order of date, then of stations.csv, and the state after the last.</summary>
public sealed record BalanceResult(IReadOnlyList<ZoneDay> Days, SoilState End);
