using System.CommandLine;
using System.Diagnostics;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Benchmarks;

/// <summary>
/// What more years cost: the balance of each zone day, one morning's advice, and of that what it takes to decide about every program, before the nights are fitted. A line each: what, years,
/// nanoseconds, bytes allocated.
/// </summary>
internal static class GrowthCommand
{
    private static readonly int[] _years = [1, 2, 5, 10];

    public static Command Create() => MeasuredHome.Command(
        "growth", "What 1, 2, 5 and 10 years cost at a home's first site; nothing is written.", "The home folder, with a course of ten years of weather.", (sites, date) => Measure(sites[0], date));

    private static void Measure(SiteFolder folder, DateOnly date)
    {
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var inputs = MorningKnowledge.Of(site, date, ReportTime.Of(site.Newest, date).Instant, issue: 1);
        var zones = site.Newest.Stations;
        var known = _years.Where(years => date.AddDays(-365 * years) >= site.Versions[0].Site.Start).ToList();
        InTurn.Tell("zone-day", known.Select(years =>
        {
            var first = date.AddDays(-365 * years);
            var balance = new BalanceInputs
            {
                Versions = inputs.Versions,
                Weather = [.. WeatherBook.Through(site, date.AddDays(-2), first).TakeWhile(d => d.EtoMm is not null)],
                Log = inputs.Log,
                StartState = new SoilState(first, zones.ToDictionary(z => z.Key, _ => 0.0)),
            };
            return (years, (double)balance.Weather.Count * zones.Count, (Action)(() => Run(balance)));
        }));

        var sheet = MorningCalculation.Run(inputs);
        var later = known.Prepend(0).Select(years => (Years: years, Inputs: WithHistory(inputs, sheet, years))).ToList();
        InTurn.Tell("advice", later.Select(l => (l.Years, 1.0, (Action)(() => MorningCalculation.Run(l.Inputs)))));
        InTurn.Tell("decisions", later.Select(l => (l.Years, 1.0, (Action)(() => MorningCalculation.Judge(l.Inputs)))));
    }

    private static void Run(BalanceInputs inputs)
    {
        foreach (var day in Balance.DayByDay(inputs))
        {
            Debug.Assert(day.Count > 0, "Every day has its zones.");
        }
    }

    /// <summary>As if a sheet had been issued on every date that asks for every fourth program, and its round been done.</summary>
    private static MorningInputs WithHistory(MorningInputs inputs, MorningSheet sheet, int years)
    {
        List<DateOnly> dates = [.. Enumerable.Range(1, years * 365).Select(d => inputs.Date.AddDays(-d)).Where(d => d > inputs.Versions[0].Site.Start).Order()];

        // In the program what old sheets say stays in the ledger: four lists stand for all of them.
        List<IssuedLine>[] lines = [.. Enumerable.Range(0, 4).Select(day => sheet.Programs.Select((p, i) => new IssuedLine(p.Key, AdviceKind.Set, 80 + (i % 9 * 5), Asks: (i + day) % 4 == 0)).ToList())];
        return inputs with
        {
            Sheets = [.. dates.Select(d => new IssuedSheet(d, 1, sheet.Site.Clock.ToInstant(d, new(5, 0)), lines[d.DayNumber % 4]))],
            Log = [.. inputs.Log, .. dates.Select(d => new LogEntry { Time = new LogTime(d, new(7, 0)), Kind = LogKind.Round, Where = new Place(PlaceKind.Site, "", ""), Sheet = d })],
        };
    }
}
