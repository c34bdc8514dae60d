using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`balance`: every zone's water, day by day.</summary>
internal static class BalanceCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        return new AppCommand(
            "balance",
            "Prints every zone's water, day by day: what was drawn, what came in, what is missing at the day's end.",
            "Metric; an empty cell is unknown. Without dates: every finished day since the balance began. It ends before a day whose weather is open.",
            "balance --from 2026-06-10 --to 2026-06-12",
            "balance --date 2026-06-10 --format csv")
        {
            range.From, range.To, range.Format,
        }.Runs(global, time, context => Run(context, range));
    }

    private static int Run(CommandContext context, RangeOptions range)
    {
        var (from, to) = range.Range(context);
        using var site = context.OneSite().ToRead();
        range.Print(context, BalanceTable.Of(site.Ledger.InOneView(() => BalanceBook.Between(site, from, to))));
        return ExitCode.Done;
    }
}
