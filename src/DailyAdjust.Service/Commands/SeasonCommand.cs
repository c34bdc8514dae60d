using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Weather;
using DailyAdjust.Ledger;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`season`: percentages by month and program.</summary>
internal static class SeasonCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        return new AppCommand(
            "season",
            "Percentage by month and program of a mean year, from the normals in site.yaml. Changes nothing.",
            "Month's need / peak month's need, where base minutes are set for the peak month (`dailyadjust plan`). Where the normals know the rain of a\nmonth, or the site's own days do over 10 years and more, a second number has the effective rain taken off. 0 = off. Sentences below the table (of csv\nand json on the error stream) say what that rain rests on: docs/planning.md.",
            "season",
            "season --format csv > season.csv")
        {
            range.Format,
        }.Runs(global, time, context => Run(context, range));
    }

    private static int Run(CommandContext context, RangeOptions range)
    {
        var folder = context.OneSite();
        var (site, normals) = PlanningInput.Of(folder);
        var days = Days(folder);
        var before = days.Count > 0 ? days[^1].Date.AddDays(1) : DateOnly.MinValue;
        var gauge = site.Weather.Gauges[0].Id;
        var rain = EffectiveRain.OfYear(days, gauge, before, normals.RainMm);
        var seasons = SeasonPercent.Of(site, normals.EtoMmPerDay, rain);
        var isTable = context.Parsed.GetValue(range.Format) is not ("csv" or "json");
        range.Print(context, isTable ? SeasonTable.Summary(seasons) : SeasonTable.Of(seasons));
        foreach (var sentence in SeasonRainWords.Of(rain, EffectiveRain.OfMonths(days, gauge, before)))
        {
            (isTable ? context.Out : context.Error).WriteLine(sentence);
        }

        return ExitCode.Done;
    }

    /// <summary>The site's finished days; none where nothing has been taken in.</summary>
    private static IReadOnlyList<WeatherDay> Days(SiteFolder folder)
    {
        try
        {
            using var open = OpenSite.Open(folder, LedgerMode.Read);
            return open.Ledger.InOneView(() => open.Versions.Count > 0 && WeatherBook.LastFinished(open) is { } last ? WeatherBook.Through(open, last) : []);
        }
        catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
        {
            return [];
        }
    }
}
