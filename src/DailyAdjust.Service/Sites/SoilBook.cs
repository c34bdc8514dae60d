using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger.Derived;

namespace DailyAdjust.Service.Sites;

/// <summary>
/// Where a balance may begin instead of at the site's start: the depletions at each month's first, and the water of the days before, kept in the
/// ledger. They save time in later years and never change a result.
/// </summary>
public static class SoilBook
{
    /// <summary>The newest state from which a sheet of this date can begin (null = from the site's start), and the year's water before it.</summary>
    /// <param name="site">Opened.</param>
    /// <param name="date">The sheet's date.</param>
    /// <param name="notUsed">Entries that hold and are later than the sheet may know.</param>
    public static (SoilState? State, IReadOnlyList<DayWater> WaterBefore) ForSheet(OpenSite site, DateOnly date, IReadOnlyList<LogEntry> notUsed)
    {
        var clock = site.Newest.Clock;
        var newYear = new DateOnly(date.Year, 1, 1);
        var limits = site.Newest.WaterLimits;
        var year = limits.HasYear && limits.YearOf(date) is var waterYear && waterYear < newYear ? waterYear : newYear;
        var start = site.Versions[0].Site.Start;
        var first = year > start ? year : start;
        var shown = notUsed.Select(e => TouchedDays.FirstOf(e, clock)).Append(date.AddDays(-LookBack.DaysShown)).Min();
        var state = Newest(site, shown);
        if (state is null || state.Date <= first)
        {
            return (state, []);
        }

        return WaterBook.Kept(site, first, state.Date.AddDays(-1)) is { } water ? (state, water) : (Newest(site, first), []);
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
                var run = Balance.Run(new BalanceInputs { Versions = site.Versions, Weather = days, Before = before, Log = log, Sheets = sheets, StartState = start, ListFrom = DateOnly.MaxValue });
                if (run.End.Date.Day != 1)
                {
                    break;
                }

                start = run.End;
                before.AddRange(days);
                site.Ledger.States.Put(start, HashOf(site, start.Date));
                foreach (var (day, litres) in days.Zip(run.Litres))
                {
                    site.Ledger.Litres.Put(new StoredLitres(day.Date, litres, HashOf(site, day.Date.AddDays(1))));
                }
            }
        });
    }

    /// <summary>The versions that a state rests on: all that hold before it.</summary>
    internal static string HashOf(OpenSite site, DateOnly date) =>
        string.Join('|', [CalculationVersions.Calculation, CalculationVersions.TimeZones, .. site.Texts.Where(t => t.From < date).Select(t => t.Sha)]);
}
