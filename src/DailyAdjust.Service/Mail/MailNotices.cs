using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports.Words;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Mail;

/// <summary>What a sheet tells of mail that failed: that of its own date's earlier issues, and of the newest date with mail of the two before.</summary>
internal static class MailNotices
{
    private const int DaysTold = 2;

    public static IReadOnlyList<string> Of(OpenSite site, DateOnly date)
    {
        var outbox = site.Ledger.Outbox;
        var troubled = outbox.Between(outbox.NewestBefore(date) is { } before && before >= date.AddDays(-DaysTold) ? before : date, date)
            .Where(m => m.State is MessageState.Refused or MessageState.Uncertain or MessageState.GivenUp || (m.State == MessageState.Waiting && m.Tries > 0));

        // One sentence for all whom the same thing kept from the same sheet.
        return [.. troubled.GroupBy(m => (m.Date, m.Issue, m.State, m.Said)).Select(Sentence)];
    }

    private static string Sentence(IGrouping<(DateOnly Date, int Issue, MessageState State, string Said), OutboxMessage> group)
    {
        var (date, issue, state, said) = group.Key;
        List<string> recipients = [.. group.Select(m => m.Recipient)];
        return state switch
        {
            MessageState.Refused => MailWords.Refused(recipients, date, issue, said),
            MessageState.Uncertain => MailWords.Uncertain(recipients, date, issue, said),
            MessageState.GivenUp => MailWords.GivenUp(recipients, date, issue, said),
            _ => MailWords.NotYet(recipients, date, issue, group.Max(m => m.Tries), said),
        };
    }
}
