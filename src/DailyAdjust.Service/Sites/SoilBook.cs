using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// Where a balance may begin instead of at the site's start: the depletions at each month's first, kept in the ledger. They save
/// time in later years and never change a result.
/// </summary>
public static class SoilBook
{
    /// <summary>A sheet shows the year's water and two weeks of moisture, so it begins this far back.</summary>
    private const int DaysShown = 60;

    /// <summary>The newest state from which a sheet of this date can begin; null = from the site's start.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="notUsed">Entries that hold and are later than the sheet may know.</param>
    public static SoilState? ForSheet(OpenSite site, DateOnly date, IReadOnlyList<LogEntry> notUsed)
    {
        var clock = site.Newest.Clock;
        var newYear = new DateOnly(date.Year, 1, 1);
        var back = date.AddDays(-DaysShown);
        var limits = site.Newest.WaterLimits;
        var waterYear = limits.HasYear ? limits.YearOf(date) : newYear;
        return Newest(site, notUsed.Select(e => TouchedDays.FirstOf(e, clock)).Append(newYear).Append(waterYear).Append(back).Min());
    }

    /// <summary>The newest kept state of this date or an earlier one; null = from the site's start.</summary>
    public static SoilState? Newest(OpenSite site, DateOnly date) =>
        site.Ledger.States.NewestUpTo(date) is { } stored && string.Equals(stored.InputsHash, HashOf(site, stored.State.Date), StringComparison.Ordinal)
            ? stored.State
            : null;

    /// <summary>Keeps the depletions of the month's firsts that have passed and are not kept yet.</summary>
    /// <param name="site">Opened for writing.</param>
    /// <param name="through">The last finished day.</param>
    public static void Keep(OpenSite site, DateOnly through)
    {
        var month = new DateOnly(through.Year, through.Month, 1);
        var start = Newest(site, month);
        var first = start?.Date ?? site.Versions[0].Site.Start;
        if (month <= first)
        {
            return;
        }

        IReadOnlyList<WeatherDay> known = [.. WeatherBook.Through(site, month.AddDays(-1), first).TakeWhile(day => day.EtoMm is not null)];
        var log = site.Ledger.Logbook.Effective();
        var sheets = site.Ledger.Sheets.Issued();
        List<WeatherDay> before = [.. WeatherBook.BeforeState(site, site.Versions, start)];
        site.Ledger.InOneStep(() =>
        {
            foreach (var days in known.GroupBy(d => (d.Date.Year, d.Date.Month)).Select(g => g.ToList()))
            {
                var end = Balance.Run(new BalanceInputs { Versions = site.Versions, Weather = days, Before = before, Log = log, Sheets = sheets, StartState = start }).End;
                if (end.Date.Day != 1)
                {
                    break;
                }

                start = end;
                before.AddRange(days);
                site.Ledger.States.Put(end, HashOf(site, end.Date));
            }
        });
    }

    /// <summary>The versions that a state rests on: all that hold before it.</summary>
    private static string HashOf(OpenSite site, DateOnly date) =>
        string.Join('|', [CalculationVersions.Calculation, CalculationVersions.TimeZones, .. site.Texts.Where(t => t.From < date).Select(t => t.Sha)]);
}
