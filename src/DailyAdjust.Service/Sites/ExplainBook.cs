using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Sites;

/// <summary>A station's day, from the readings to its depletion.</summary>
public static class ExplainBook
{
    /// <summary>Every step of a finished day; no zone steps where the station has no such day.</summary>
    public static IReadOnlyList<Section> OfDay(OpenSite site, DateOnly date, StationKey station)
    {
        var start = site.Versions[0].Site.Start;
        var state = date > start ? SoilBook.Newest(site, date) : null;
        var back = date.AddDays(-LookBack.Days) > start ? date.AddDays(-LookBack.Days) : start;
        var days = WeatherBook.Through(site, date, back);
        var balance = BalanceBook.InputsThrough(site, date, state);
        var eto = EtoSteps.Of(
            new WeatherDayInputs
            {
                Versions = site.Versions,
                From = date,
                Through = date,
                Readings = ReadingsBook.Between(site, date.AddDays(-2), date.AddDays(1)),
                Log = balance.Log,
                Before = [.. days.SkipLast(1)],
                AsOf = DateTimeOffset.MaxValue,
            },
            days[^1]);
        return [.. eto, .. ZoneDaySteps.Of(balance, station)];
    }
}
