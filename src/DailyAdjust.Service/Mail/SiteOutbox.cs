using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;
using MimeKit;

namespace DailyAdjust.Service.Mail;

/// <summary>What came of one message in one look.</summary>
/// <param name="Message">As the ledger has it now.</param>
/// <param name="Outcome">Of its try; null = it was ended without one.</param>
public sealed record SentMessage(OutboxMessage Message, MailOutcome? Outcome);

/// <summary>
/// Sends what one site has promised. The ledger is opened for moments only, never while a server is waited for; each step is kept before the next
/// begins, so that a start after a crash knows whether a message can have reached the server.
/// </summary>
public sealed class SiteOutbox(SiteFolder folder, HomeFolder home, MailOptions mail, TimeProvider time, ILogger log)
{
    /// <summary>What the server answered must be kept: a morning's work on the ledger is waited for.</summary>
    private static readonly TimeSpan PatienceForAnswers = TimeSpan.FromMinutes(2);

    /// <summary>Tries what is due.</summary>
    /// <param name="atOnce">Also what is not due yet.</param>
    /// <returns>Empty = nothing was due; null = another process sends just now.</returns>
    /// <exception cref="LedgerException">The disk or another process stands in the way.</exception>
    public async Task<IReadOnlyList<SentMessage>?> SendAsync(bool atOnce, CancellationToken stop)
    {
        if (Due(atOnce).Count == 0)
        {
            return [];
        }

        using var held = SendingLock.Take(folder);
        if (held is null)
        {
            return null;
        }

        var done = new List<SentMessage>();
        foreach (var message in Due(atOnce))
        {
            if (stop.IsCancellationRequested)
            {
                break;
            }

            var outcome = await SendOneAsync(message, stop).ConfigureAwait(false);
            done.Add(Told(message.MessageId, outcome));
            if (outcome?.IsOfServer == true)
            {
                // It would be the same with the next one: that is tried at the next look.
                break;
            }
        }

        return done;
    }

    private IReadOnlyList<OutboxMessage> Due(bool atOnce)
    {
        if (!File.Exists(folder.LedgerFile))
        {
            return [];
        }

        try
        {
            var now = time.GetUtcNow();
            using var ledger = SiteLedger.Open(folder.LedgerFile, LedgerMode.Read);
            return [.. ledger.Outbox.Open().Where(m => atOnce || m.State == MessageState.HandedOver || MailPauses.IsDue(m, now) || MailPauses.IsTooOld(m, now, mail))];
        }
        catch (LedgerException missing) when (missing.Trouble == LedgerTrouble.Missing)
        {
            // The first morning is just making it.
            return [];
        }
    }

    /// <returns>Null = it came to no try.</returns>
    private async Task<MailOutcome?> SendOneAsync(OutboxMessage message, CancellationToken stop)
    {
        try
        {
            var known = message.State == MessageState.HandedOver ? AfterCrash(message) : message;
            return known.IsEnded || EndsAsTooOld(known) ? null : await TryAsync(known, stop).ConfigureAwait(false);
        }
        catch (GaveWayException)
        {
            return null;
        }
    }

    private OutboxMessage AfterCrash(OutboxMessage message) =>
        Keep(message, o => o.RecordDoubt(message.MessageId, "this program ended while the server took the text"));

    private bool EndsAsTooOld(OutboxMessage message)
    {
        if (!MailPauses.IsTooOld(message, time.GetUtcNow(), mail))
        {
            return false;
        }

        var state = message.Doubts > 0 ? MessageState.Uncertain : MessageState.GivenUp;
        Keep(message, o => o.RecordEnded(message.MessageId, state, FormattableString.Invariant(
            $"not taken within {mail.GiveUpAfterHours} h (tries: {message.Tries}){(message.Said.Length > 0 ? ", the last: " + message.Said : "")}")));
        return true;
    }

    private async Task<MailOutcome> TryAsync(OutboxMessage message, CancellationToken stop)
    {
        Keep(message, o => o.RecordTry(message.MessageId, time.GetUtcNow() + MailPauses.After(message.Tries + 1, mail)));
        MailOutcome outcome;
        try
        {
            var account = MailAccount.Open(mail, home);
            using var mime = Message(message);
            outcome = await SmtpDelivery.SendAsync(account, mime, () => Keep(message, o => o.RecordHandedOver(message.MessageId)), stop).ConfigureAwait(false);
        }
        catch (WrongInputException wrong)
        {
            outcome = new(MailResult.NotTaken, $"{wrong.Message.TrimEnd('.')}. {wrong.Hint.TrimEnd('.')}", IsOfServer: true);
        }

        Keep(message, o => Record(o, message, outcome), PatienceForAnswers);
        return outcome;
    }

    private static void Record(Outbox outbox, OutboxMessage message, MailOutcome outcome)
    {
        switch (outcome.Result)
        {
            case MailResult.Taken:
                outbox.RecordEnded(message.MessageId, MessageState.Sent, outcome.Said);
                break;
            case MailResult.Doubtful:
                outbox.RecordDoubt(message.MessageId, outcome.Said);
                break;
            case MailResult.Refused:
                // The first hand-over may have been kept all the same.
                outbox.RecordEnded(message.MessageId, message.Doubts > 0 ? MessageState.Uncertain : MessageState.Refused, outcome.Said);
                break;
            default:
                outbox.RecordNotTaken(message.MessageId, outcome.Said);
                break;
        }
    }

    private MimeMessage Message(OutboxMessage message)
    {
        using var ledger = SiteLedger.Open(folder.LedgerFile, LedgerMode.Read);
        var issued = ledger.Sheets.ReportFiles(message.Date, message.Issue).ToDictionary(f => f.Key, f => f.Value, StringComparer.Ordinal);
        return SheetMessage.Of(message, MailCheck.Address(mail.From)!, name =>
        {
            // What was issued comes from the ledger; what was made of it later lies beside it, as long as no later issue does.
            var beside = folder.ReportFolder(message.Date);
            return issued.TryGetValue(name, out var bytes) ? bytes : Read(beside, ReportFiles.Html).AsSpan().SequenceEqual(issued[ReportFiles.Html]) ? Read(beside, name) : null;
        });
    }

    /// <summary>One that cannot be read just now holds no mail: it goes without.</summary>
    private byte[]? Read(string beside, string name)
    {
        try
        {
            return Path.Combine(beside, name) is var path && File.Exists(path) ? File.ReadAllBytes(path) : null;
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            log.LogWarning("{Site}: the mail goes without {File}: {Failure}", folder.Name, name, failure.Message);
            return null;
        }
    }

    private OutboxMessage Keep(OutboxMessage message, Action<Outbox> record, TimeSpan? wait = null)
    {
        using var ledger = SiteLedger.Open(folder.LedgerFile, LedgerMode.Write, wait);
        if (ledger.Outbox.Get(message.MessageId)!.State == MessageState.Replaced)
        {
            throw new GaveWayException();
        }

        record(ledger.Outbox);
        return ledger.Outbox.Get(message.MessageId)!;
    }

    private SentMessage Told(string messageId, MailOutcome? outcome)
    {
        using var ledger = SiteLedger.Open(folder.LedgerFile, LedgerMode.Read);
        var message = ledger.Outbox.Get(messageId)!;
        ServiceMetrics.MailTried(folder.Name, MailStates.InWords(message));
        var level = message.State switch
        {
            MessageState.Sent => LogLevel.Information,
            MessageState.Waiting or MessageState.Replaced => LogLevel.Warning,
            _ => LogLevel.Error,
        };
        log.Log(
            level,
            "{Site}: mail of sheet {Date:yyyy-MM-dd}/{Issue} to {Recipient}: {State}, tries: {Tries}. {Said}",
            folder.Name, message.Date, message.Issue, message.Recipient, MailStates.InWords(message), message.Tries, message.Said);
        return new(message, outcome);
    }

    /// <summary>A newer sheet was promised while this one was on its way to the server: its text is not handed over any more.</summary>
    private sealed class GaveWayException : Exception;
}
