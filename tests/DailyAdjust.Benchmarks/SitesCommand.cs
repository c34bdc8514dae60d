using System.CommandLine;
using DailyAdjust.Core.Morning;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Benchmarks;

/// <summary>What more sites cost: one morning of 1, 10, 100 and 1,000 of them, gathered from their ledgers and reckoned, a zone day. A line each: "site-zone-day", sites, nanoseconds, bytes allocated.</summary>
internal static class SitesCommand
{
    private static readonly int[] _sites = [1, 10, 100, 1000];

    public static Command Create() => MeasuredHome.Command(
        "sites", "What a morning of 1, 10, 100 and 1,000 sites of a home costs; nothing is written.", "The home folder, with as many courses as are to be measured.", Measure);

    private static void Measure(IReadOnlyList<SiteFolder> folders, DateOnly date) => InTurn.Tell("site-zone-day", _sites.Where(n => n <= folders.Count).Select(n =>
    {
        List<SiteFolder> some = [.. folders.Take(n)];
        return (n, some.Sum(folder => Morning(folder, date)), (Action)(() => some.ForEach(folder => Morning(folder, date))));
    }));

    /// <returns>How many zone days it rests on.</returns>
    private static double Morning(SiteFolder folder, DateOnly date)
    {
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var inputs = MorningKnowledge.Of(site, date, ReportTime.Of(site.Newest, date).Instant, issue: 1);
        return inputs.Weather.Count * MorningCalculation.Run(inputs).Site.Stations.Count;
    }
}
