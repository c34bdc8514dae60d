using DailyAdjust.Ledger.Records;

namespace DailyAdjust.Service.Mail;

/// <summary>What became of a message, in a word or two.</summary>
internal static class MailStates
{
    public static string InWords(OutboxMessage message) => message.State switch
    {
        MessageState.Waiting when message.Tries == 0 => "waiting",
        MessageState.Waiting when message.Doubts > 0 => "perhaps arrived, sent once more",
        MessageState.Waiting => "waiting for another try",
        MessageState.HandedOver => "being sent",
        MessageState.Sent => "sent",
        MessageState.Replaced => "replaced by a newer sheet",
        MessageState.Refused => "refused",
        MessageState.Uncertain => "perhaps arrived",
        MessageState.GivenUp => "given up",
        _ => throw new ArgumentOutOfRangeException(nameof(message), message.State, "Not a state."),
    };
}
