using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Text;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Commands;

/// <summary>`visits`: which boxes to open where there is no time for all.</summary>
internal static class VisitsCommand
{
    public static AppCommand Create(GlobalOptions global, TimeProvider time)
    {
        var boxes = new Option<int?>("--boxes") { Description = "How many boxes can be opened; without it: all, in their order.", HelpName = "N", CustomParser = ReadCount };
        var range = new RangeOptions();
        return new AppCommand(
            "visits",
            "If only N boxes can be opened: those that cost most to leave, what is to be done at each, and what leaving the others costs.",
            "Takes every box as if somebody came to it that morning, planned or not: water that would drain and ground that would go past the allowable\nuntil its next visit, as a share of allowable depletion. A box with an order to switch off comes first; equals stand in walking order. Without --date:\nthe newest sheet's morning, else now. Changes nothing. How boxes hang together: docs/visits.md.",
            "visits --boxes 3",
            "visits --boxes 2 --date 2026-06-09 --format csv")
        {
            boxes, range.Format,
        }.Runs(global, time, context => Run(context, context.Parsed.GetValue(boxes), range));
    }

    private static int? ReadCount(ArgumentResult result)
    {
        var text = result.Tokens[0].Value;
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count > 0)
        {
            return count;
        }

        result.AddError($"--boxes {text}: write how many boxes can be opened, 1 or more.");
        return null;
    }

    private static int Run(CommandContext context, int? boxes, RangeOptions range)
    {
        using var site = context.OneSite().ToRead();
        var visits = site.Ledger.InOneView(() =>
        {
            var morning = MorningTime.Of(
                site.Newest, context.Date ?? AdviceBook.NewestDate(site), context.Time.GetUtcNow(), TimeSpan.FromMinutes(context.Options.WorkBeginsMinutesBefore));
            return MorningCalculation.Visits(AdviceBook.WouldKnow(site, morning));
        });
        if (context.Parsed.GetValue(range.Format) is "csv" or "json")
        {
            range.Print(context, VisitsTable.Of(visits, boxes));
            if (visits.NoAdvice is { } why)
            {
                context.Error.WriteLine($"No sound advice: {why}");
            }
        }
        else
        {
            context.Out.Write(VisitsText.Write(visits, boxes));
        }

        return ExitCode.Done;
    }
}
