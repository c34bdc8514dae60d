using System.CommandLine;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Text;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`summary`: where the water of a week, a season or any span went.</summary>
internal static class SummaryCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        var week = new Option<bool>("--week") { Description = "The last week from Monday to Sunday that is over; with --date the one before that date." };
        var by = new Option<string>("--by") { Description = "What csv and json have a row for: total, day, month, program or area.", DefaultValueFactory = _ => "month" };
        by.AcceptOnlyFromAmong("total", "day", "month", "program", "area");
        return new AppCommand(
            "summary",
            "Water used by program, area and site, against allotment, permit and the year before; what skips left out; days past the allowable.",
            "Estimated from minutes and flow; what meters say stands apart. Without dates: the year so far. As csv it is made for whoever\nasks for the year's use by month or day. Columns and site.yaml's water: section: docs/summary.md.",
            "summary --week",
            "summary --from 2026-05-01 --to 2026-05-31",
            "summary --format csv --by month")
        {
            range.From, range.To, week, by, range.Format,
        }.Runs(global, time, context => Run(context, range, context.Parsed.GetValue(week), context.Parsed.GetValue(by)!));
    }

    private static int Run(CommandContext context, RangeOptions range, bool week, string by)
    {
        using var site = context.OneSite().ToRead();
        var (from, to) = week ? Week(context, site, range) : Span(range, context);
        var books = site.Ledger.InOneView(() => WaterBook.Between(site, from, to))
            ?? throw new WrongInputException("There is no finished day in that span.", FormattableString.Invariant($"The balance begins on {site.Versions[0].Site.Start:yyyy-MM-dd}; a day is finished once its weather is in."));
        if (context.Parsed.GetValue(range.Format) is "csv" or "json")
        {
            range.Print(context, TableOf(books, by));
        }
        else
        {
            context.Out.Write(SummaryText.Write(SiteVersions.On(site.Versions, books.To), books));
        }

        return ExitCode.Done;
    }

    private static Table TableOf(WaterBooks books, string by) => by switch
    {
        "total" => SummaryTable.Totals(books),
        "day" => SummaryTable.ByDay(books),
        "program" => SummaryTable.ByProgram(books),
        "area" => SummaryTable.ByArea(books),
        _ => SummaryTable.ByMonth(books),
    };

    /// <summary>--date alone is the last day of its year so far.</summary>
    private static (DateOnly? From, DateOnly? To) Span(RangeOptions range, CommandContext context)
    {
        var (from, to) = range.Range(context);
        return context.Parsed.GetValue(range.From) is null ? (null, to) : (from, to);
    }

    private static (DateOnly? From, DateOnly? To) Week(CommandContext context, OpenSite site, RangeOptions range)
    {
        if (context.Parsed.GetValue(range.From) is not null || context.Parsed.GetValue(range.To) is not null)
        {
            throw new WrongInputException("--week and --from or --to contradict one another.", "Use --week with --date, or name the span.");
        }

        var date = context.Date ?? WeatherBook.LastFinished(site)?.AddDays(1) ?? site.Versions[0].Site.Start;
        var week = CalendarWeek.LastBefore(date);
        return (week.Monday, week.Sunday);
    }
}
