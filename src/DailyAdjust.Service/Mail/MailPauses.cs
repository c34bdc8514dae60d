using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Configuration;

namespace DailyAdjust.Service.Mail;

/// <summary>When a message is tried: the pauses stand in the ledger, not in memory, because they have to outlive a restart.</summary>
public static class MailPauses
{
    public static TimeSpan Longest { get; } = TimeSpan.FromHours(1);

    /// <summary>The pause after so many failed tries: it doubles with each, up to <see cref="Longest"/>.</summary>
    /// <param name="tries">1 or more.</param>
    public static TimeSpan After(int tries, MailOptions mail)
    {
        var seconds = mail.RetrySeconds * Math.Pow(2, Math.Min(tries, 30) - 1);
        return seconds < Longest.TotalSeconds ? TimeSpan.FromSeconds(seconds) : Longest;
    }

    /// <summary>Whether its time has come; a pause longer than there are any means that the clock was set back.</summary>
    public static bool IsDue(OutboxMessage message, DateTimeOffset now) => message.NextTry <= now || message.NextTry > now + Longest;

    /// <summary>Whether it is too old to be of use.</summary>
    public static bool IsTooOld(OutboxMessage message, DateTimeOffset now, MailOptions mail) => now - message.PromisedAt > TimeSpan.FromHours(mail.GiveUpAfterHours);
}
