namespace DailyAdjust.Service.Mail;

public enum MailResult
{
    /// <summary>The server took it.</summary>
    Taken,

    /// <summary>The server surely has not kept it; later it may.</summary>
    NotTaken,

    /// <summary>The server will not have this message, now or later.</summary>
    Refused,

    /// <summary>The whole text went out and no answer came back: the server may have kept it.</summary>
    Doubtful,
}

/// <summary>What one try came to.</summary>
/// <param name="Result">What it means for the message.</param>
/// <param name="Said">In words, on one line, without a full stop and without any secret.</param>
/// <param name="IsOfServer">It would be the same with any other message: nobody else is tried in this look.</param>
public sealed record MailOutcome(MailResult Result, string Said, bool IsOfServer = false);
