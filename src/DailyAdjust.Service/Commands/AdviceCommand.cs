using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`advice`: what sheets say.</summary>
internal static class AdviceCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        return new AppCommand(
            "advice",
            "Prints what the sheets say, with the columns of advice.csv.",
            "Without dates: the newest sheet. A --date without a sheet is computed as of its report hour and not issued. setting 0 is off; percent is\nempty for skip, off and as-set.",
            "advice",
            "advice --date 2026-06-09 --format csv",
            "advice --from 2026-06-01 --to 2026-06-30 --format csv > june.csv")
        {
            range.From, range.To, range.Format,
        }.Runs(global, time, context => Run(context, range));
    }

    private static int Run(CommandContext context, RangeOptions range)
    {
        var (from, to) = range.Range(context);
        using var site = context.OneSite().ToRead();
        range.Print(context, AdviceTable.Of(site.Ledger.InOneView(() => Rows(context, site, from, to))));
        return ExitCode.Done;
    }

    private static IReadOnlyList<AdviceRow> Rows(CommandContext context, OpenSite site, DateOnly? from, DateOnly? to)
    {
        if (from is null && to is null)
        {
            from = to = AdviceBook.NewestDate(site);
        }

        var issued = from is null && to is null ? [] : AdviceBook.Issued(site, from, to);
        if (issued.Count > 0 || (from != to && (from ?? to) is not null))
        {
            return issued;
        }

        var morning = MorningTime.Of(site.Newest, from, context.Time.GetUtcNow(), TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore));
        var local = site.Newest.Clock.ToLocal(morning.AsOf);
        context.Error.WriteLine(FormattableString.Invariant($"No sheet was issued: computed as of {local:yyyy-MM-dd HH:mm}."));
        return AdviceBook.Rows(AdviceBook.Would(site, morning));
    }
}
