using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Service.Sites;

/// <summary>Zone days, computed from the nearest kept depletions; rows are not stored.</summary>
public static class BalanceBook
{
    /// <summary>Finished days, both ends included, as all that has arrived has them; up to the first open one.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="from">The first date; null = since the balance began.</param>
    /// <param name="to">The last date; null = the last finished day.</param>
    /// <returns>Zone days of one date after another, computed as they are asked for: ten years of a large course are millions.</returns>
    public static IEnumerable<IReadOnlyList<ZoneDay>> DayByDay(OpenSite site, DateOnly? from, DateOnly? to)
    {
        if (WeatherBook.LastFinished(site) is not { } finished)
        {
            return [];
        }

        var last = to < finished ? to.Value : finished;
        var start = site.Versions[0].Site.Start;
        var state = from is { } first && first > start ? SoilBook.Newest(site, first) : null;
        return last < (state?.Date ?? start) ? [] : Balance.DayByDay(InputsThrough(site, last, state) with { ListFrom = from });
    }

    /// <summary>What a balance is run on, as all that has arrived has it.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="last">The last day; up to the first open one.</param>
    /// <param name="state">Where it begins; null = at the site's start.</param>
    internal static BalanceInputs InputsThrough(OpenSite site, DateOnly last, SoilState? state) => new()
    {
        Versions = site.Versions,
        Weather = [.. WeatherBook.Through(site, last, state?.Date).TakeWhile(day => day.EtoMm is not null)],
        Before = WeatherBook.BeforeState(site, site.Versions, state),
        Log = site.Ledger.Logbook.Effective(),
        Sheets = site.Ledger.Sheets.Issued(),
        StartState = state,
    };
}
