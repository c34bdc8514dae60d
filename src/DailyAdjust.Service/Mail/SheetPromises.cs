using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Service.Mail;

/// <summary>Decides who is promised a sheet; the promises are kept in the step that marks the sheet as written: from then on no crash can lose it.</summary>
/// <param name="mail">Who gets what.</param>
/// <param name="time">The clock.</param>
public sealed class SheetPromises(MailOptions mail, TimeProvider time)
{
    /// <summary>Null = no mail is set up.</summary>
    public static SheetPromises? Of(ServiceOptions options, TimeProvider time) => options.Mail is { } mail ? new(mail, time) : null;

    /// <summary>
    /// The promises of a sheet, none of them kept yet. Who wants only changes gets it when it asks for something; a later issue goes only to those whose newest issue of the date asks
    /// for something else. A sheet of a past day is nobody's morning mail.
    /// </summary>
    public IReadOnlyList<OutboxMessage> For(OpenSite site, DateOnly date, int issue)
    {
        var now = time.GetUtcNow();
        if (date < site.Newest.Clock.DateOf(now))
        {
            return [];
        }

        var promises = new List<OutboxMessage>();
        var from = MailCheck.Address(mail.From)!;
        var sheet = new Lazy<SheetMail>(() => Read(site, date, issue));
        foreach (var recipient in mail.Recipients.Where(r => r.Wants(site.Folder.Name)))
        {
            var to = MailCheck.Address(recipient.To)!.Address;
            if (IsNews(site, date, issue, to, recipient.OnlyIfChanges, sheet))
            {
                promises.Add(new(SheetMessage.IdOf(site.Folder.Name, site.Newest, date, issue, to, from), date, issue, to, sheet.Value.Subject, now));
            }
        }

        return promises;
    }

    private static bool IsNews(OpenSite site, DateOnly date, int issue, string to, bool onlyIfChanges, Lazy<SheetMail> sheet)
    {
        // One that was refused or given up told its recipient nothing.
        var mailed = site.Ledger.Outbox.Between(date, date).LastOrDefault(m => m.Issue < issue
            && string.Equals(m.Recipient, to, StringComparison.OrdinalIgnoreCase) && m.State is not (MessageState.Refused or MessageState.GivenUp or MessageState.Replaced));
        return mailed is null
            ? !onlyIfChanges || sheet.Value.AsksForSomething
            : !sheet.Value.AsksTheSameAs(Read(site, date, mailed.Issue));
    }

    private static SheetMail Read(OpenSite site, DateOnly date, int issue)
    {
        var record = site.Ledger.Mornings.Get(date, issue)!;
        var description = SiteVersions.On(site.VersionsUpTo(record.Watermark), date);
        return new SheetMail(AdviceBook.AdviceJson(site, date, issue), description);
    }
}
