using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>What one morning is a function of; nothing later than <see cref="AsOf"/> may be in it.</summary>
public sealed record MorningInputs
{
    public required IReadOnlyList<SiteVersion> Versions { get; init; }

    /// <summary>The sheet's date.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The instant whose knowledge counts, UTC.</summary>
    public required DateTimeOffset AsOf { get; init; }

    /// <summary>Consecutive days from the start state's date (or the site's start) through the day before <see cref="Date"/>; open days included.</summary>
    public required IReadOnlyList<WeatherDay> Weather { get; init; }

    /// <summary>Days right before the first of <see cref="Weather"/>, ascending: rain switches look back 45 days. None where no box has one.</summary>
    public IReadOnlyList<WeatherDay> Before { get; init; } = [];

    /// <summary>What is known by now of the rain since midnight, one per gauge.</summary>
    public required IReadOnlyList<GaugeDay> RainSinceMidnight { get; init; }

    /// <summary>Rain since midnight that was set aside, in the order of the stations and of time.</summary>
    public IReadOnlyList<SetAsideValue> RainSetAsideSinceMidnight { get; init; } = [];

    /// <summary>Readings by hand that have a say in the rain of the day before and since midnight, as <see cref="HandRains"/> finds them.</summary>
    public IReadOnlyList<HandRain> RainByHand { get; init; } = [];

    /// <summary>Water of the days right before the first of <see cref="Weather"/>, ascending: of the year (and of the permit's year) as far as the balance reaches back.</summary>
    public IReadOnlyList<DayWater> WaterBefore { get; init; } = [];

    /// <summary>Water of the sheet's month a year before, by day; empty where the balance does not reach back so far.</summary>
    public IReadOnlyList<DayWater> WaterYearBefore { get; init; } = [];

    /// <summary>A later look of the day: what is known by now of the reference ET since midnight; null = the first look, or nothing is.</summary>
    public EtoSoFar? EtoSoFar { get; init; }

    /// <summary>What is forecast for the sheet's date and later, by forecasts made by now and not too old, ascending; may be empty.</summary>
    public IReadOnlyList<ForecastDay> Forecast { get; init; } = [];

    /// <summary>When the newest forecast known by now was made, UTC, be it too old or not; null = there is none.</summary>
    public DateTimeOffset? ForecastIssued { get; init; }

    /// <summary>Values of the forecast that no weather can have.</summary>
    public IReadOnlyList<SetAsideValue> ForecastSetAside { get; init; } = [];

    /// <summary>ETo to expect of the sheet's date or a later one, mm: its forecast, else the last days' mean and the normals; null = nothing tells.</summary>
    public double? ExpectedEtoMm(DateOnly day, Site site) =>
        ForecastEto.For(day, Date, Forecast, Weather, site.LatitudeDeg) ?? ExpectedEto.For(day, Date, Weather, site.Weather.Normals);

    /// <summary>Readings from 18:00 of the day before to now, of the station in use, ascending (lowest temperature); may be empty.</summary>
    public IReadOnlyList<Reading> NightReadings { get; init; } = [];

    /// <summary>End of the newest reading, UTC; null = there is none.</summary>
    public DateTimeOffset? NewestReadingEnd { get; init; }

    /// <summary>The station of the newest reading; empty = there is none.</summary>
    public string NewestReadingStation { get; init; } = "";

    /// <summary>In order of arrival; voided and superseded entries removed; only entries whose instant is not after <see cref="AsOf"/>, and orders for later that were known by then.</summary>
    public required IReadOnlyList<LogEntry> Log { get; init; }

    /// <summary>Sheets issued before this one, of earlier dates and earlier issues.</summary>
    public IReadOnlyList<IssuedSheet> Sheets { get; init; } = [];

    /// <summary>What is known otherwise now than to the sheet before this one; null = nothing is.</summary>
    public Corrections? Corrections { get; init; }

    /// <summary>Depletion at 00:00 of the first weather day; null = the first day is the site's start.</summary>
    public SoilState? StartState { get; init; }
}
