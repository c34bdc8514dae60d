using DailyAdjust.Core.Irrigation;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`balance`: every zone's water, day by day.</summary>
internal static class BalanceCommand
{
    private const int DaysAtATime = 8;

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
        site.Ledger.InOneView(() =>
        {
            var days = BalanceBook.DayByDay(site, from, to);
            if (range.IsCsv(context))
            {
                PrintCsv(context.Out, days);
            }
            else
            {
                range.Print(context, BalanceTable.Of(days.SelectMany(d => d)));
            }

            return 0;
        });
        return ExitCode.Done;
    }

    /// <summary>As it is computed, a few days at a time: what is printed is not kept, and while the next days are reckoned, the last ones are printed on whatever processor is free.</summary>
    private static void PrintCsv(TextWriter into, IEnumerable<IReadOnlyList<ZoneDay>> days)
    {
        into.Write(BalanceTable.Of([]).ToCsv());
        var lines = Enumerable.Range(0, DaysAtATime).Select(_ => new CsvLines()).ToArray();
        var printing = Task.CompletedTask;
        try
        {
            foreach (var some in days.Chunk(DaysAtATime))
            {
                printing.GetAwaiter().GetResult();
                printing = Task.Run(() => Print(into, some, lines));
            }
        }
        finally
        {
            printing.GetAwaiter().GetResult();
        }
    }

    private static void Print(TextWriter into, IReadOnlyList<ZoneDay>[] days, CsvLines[] lines)
    {
        Parallel.For(0, days.Length, i =>
        {
            lines[i].Clear();
            BalanceTable.AddLines(days[i], lines[i]);
        });
        foreach (var day in lines.Take(days.Length))
        {
            day.WriteTo(into);
        }
    }
}
