using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Mail;

namespace DailyAdjust.Service.Printing;

/// <summary>One message of the outbox on one line.</summary>
internal static class MailLines
{
    public static string Of(OutboxMessage message)
    {
        var tries = message.Tries > 1 ? FormattableString.Invariant($" ({message.Tries} tries)") : "";
        var said = message.Said.Length > 0 ? $": {message.Said}" : "";
        return FormattableString.Invariant($"mail of sheet {message.Date:yyyy-MM-dd}/{message.Issue} to {message.Recipient}: {MailStates.InWords(message)}{tries}{said}");
    }
}
