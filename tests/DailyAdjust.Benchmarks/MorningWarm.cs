using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger;
using DailyAdjust.Reports;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Benchmarks;

/// <summary>One morning's parts in a warm process: what is gathered from the ledger, the advice, the files of the sheet. The least of many runs is what the work takes.</summary>
internal static class MorningWarm
{
    private const int Runs = 100;
    private const double Mega = 1e6;

    public static Command Create() => MeasuredHome.Command(
        "morning", "One morning's parts in a warm process, for every site of a home; nothing is written.", "The home folder.", (sites, date) =>
        {
            foreach (var folder in sites)
            {
                Measure(folder, date);
            }
        });

    private static void Measure(SiteFolder folder, DateOnly date)
    {
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var asOf = ReportTime.Of(site.Newest, date).Instant;
        var inputs = MorningKnowledge.Of(site, date, asOf, issue: 1);
        var sheet = MorningCalculation.Run(inputs);
        Tell($"{folder.Name}: gathered", () => MorningKnowledge.Of(site, date, asOf, issue: 1));
        Tell($"{folder.Name}: balance of {inputs.Weather.Count * sheet.Site.Stations.Count} zone days", () => BalanceOf(inputs));
        Tell($"{folder.Name}: advice of {sheet.Programs.Count} programs, {sheet.Site.Stations.Count} stations", () => MorningCalculation.Run(inputs));
        Tell($"{folder.Name}: files of the sheet", () => MorningReport.Render(sheet, new SheetIssue { SiteId = folder.Name, Number = 1, Notices = [] }));
    }

    private static BalanceResult BalanceOf(MorningInputs inputs) => Balance.Run(new BalanceInputs
    {
        Versions = inputs.Versions,
        Weather = inputs.Weather,
        Before = inputs.Before,
        Log = inputs.Log,
        Sheets = inputs.Sheets,
        StartState = inputs.StartState,
        ListFrom = inputs.Date.AddDays(-GroundPart.ChartDays),
        TracesFrom = inputs.Date.AddDays(-LookBack.DaysShown),
    });

    private static void Tell(string what, Func<object> work)
    {
        var (milliseconds, megabytes) = (new double[Runs], 0.0);
        for (var i = 0; i < Runs; i++)
        {
            GC.Collect();
            var (before, begun) = (GC.GetAllocatedBytesForCurrentThread(), Stopwatch.GetTimestamp());
            work();
            milliseconds[i] = Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
            megabytes = (GC.GetAllocatedBytesForCurrentThread() - before) / Mega;
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: first {milliseconds[0]:0.0} ms, least {milliseconds.Min():0.0} ms, middle {milliseconds.Order().ElementAt(Runs / 2):0.0} ms of {Runs} runs; {megabytes:0.0} MB allocated"));
    }
}
