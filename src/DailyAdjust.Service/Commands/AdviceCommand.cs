using DailyAdjust.Reports.Tables;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`advice`: what sheets say.</summary>
internal static class AdviceCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var range = new RangeOptions();
        var at = new AtOption();
        var visit = new VisitOption();
        return new AppCommand(
            "advice",
            "Prints what the sheets say, with the columns of advice.csv.",
            "Without dates: the newest sheet. A --date without a sheet is computed as of its report hour and not issued; where site.yaml has\nseveral report times that is the first, and --at takes another: the sheet that was issued as of it, else as it would be. setting 0 is off; percent is\nempty for skip, off and as-set. A range without a sheet prints the columns alone, says so on the error stream, and ends with 0. With --visit what the sheet would say if somebody went there, reckoned and not issued.",
            "advice",
            "advice --date 2026-06-09 --format csv",
            "advice --date 2026-06-09 --at 16:00",
            "advice --visit C2",
            "advice --from 2026-06-01 --to 2026-06-30 --format csv > june.csv")
        {
            range.From, range.To, range.Format, at.Option, visit.Option,
        }.Runs(global, time, context => Run(context, range, at, visit));
    }

    private static int Run(CommandContext context, RangeOptions range, AtOption at, VisitOption visit)
    {
        var (from, to) = range.Range(context);
        using var site = context.OneSite().ToRead();
        var (rows, sheets) = site.Ledger.InOneView(() => (Rows(context, site, at, visit, from, to), site.Ledger.Sheets.Issued()));
        range.Print(context, AdviceTable.Of(rows), "No sheet was issued", sheets.Count == 0 ? null : (sheets.Min(s => s.Date), sheets.Max(s => s.Date)));
        return ExitCode.Done;
    }

    private static IReadOnlyList<AdviceRow> Rows(CommandContext context, OpenSite site, AtOption at, VisitOption visit, DateOnly? from, DateOnly? to)
    {
        var asked = context.Parsed.GetValue(visit.Option) is { Length: > 0 };
        if (from != to && (asked ? "--visit" : context.Parsed.GetValue(at.Option) is not null ? "--at" : null) is { } option)
        {
            throw new WrongInputException($"{option} is about one morning.", "Give --date instead of --from and --to.");
        }

        if (from is null && to is null)
        {
            from = to = AdviceBook.NewestDate(site);
        }

        var look = at.Of(context, site.Newest, from);
        var issued = asked ? []
            : look is { } time ? AdviceBook.Issued(site, time)
            : from is null && to is null ? []
            : AdviceBook.Issued(site, from, to);
        if (issued.Count > 0 || (from != to && (from ?? to) is not null))
        {
            return issued;
        }

        var morning = look ?? MorningTime.Of(site.Newest, from, context.Time.GetUtcNow(), TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore));
        var local = site.Newest.Clock.ToLocal(morning.AsOf);
        context.Error.WriteLine(FormattableString.Invariant($"{(asked ? "Not issued" : "No sheet was issued")}: computed as of {local:yyyy-MM-dd HH:mm}."));
        return AdviceBook.Rows(AdviceBook.Would(site, morning, visit.Entries(context, site.Newest, morning)));
    }
}
