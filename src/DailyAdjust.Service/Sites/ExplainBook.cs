using DailyAdjust.Core.Explain;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Sites;

/// <summary>A station's day, from the readings to its depletion.</summary>
public static class ExplainBook
{
    private const int DaysLookedBack = 45;

    /// <summary>Every step of a finished day; no zone steps where the station has no such day.</summary>
    public static IReadOnlyList<Section> OfDay(OpenSite site, DateOnly date, StationKey station)
    {
        var start = site.Versions[0].Site.Start;
        var state = date > start ? SoilBook.Newest(site, date) : null;
        var back = date.AddDays(-DaysLookedBack) > start ? date.AddDays(-DaysLookedBack) : start;
        var days = WeatherBook.Through(site, date, back);
        var log = site.Ledger.Logbook.Effective();
        var eto = EtoSteps.Of(
            new WeatherDayInputs
            {
                Versions = site.Versions,
                From = date,
                Through = date,
                Readings = ReadingsBook.Between(site, date.AddDays(-2), date.AddDays(1)),
                Log = log,
                Before = [.. days.SkipLast(1)],
                AsOf = DateTimeOffset.MaxValue,
            },
            days[^1]);
        var zone = ZoneDaySteps.Of(
            new BalanceInputs
            {
                Versions = site.Versions,
                Weather = [.. WeatherBook.Through(site, date, state?.Date).TakeWhile(day => day.EtoMm is not null)],
                Log = log,
                Sheets = site.Ledger.Sheets.Issued(),
                StartState = state,
            },
            station);
        return [.. eto, .. zone];
    }
}
