using MailKit;
using MailKit.Net.Smtp;
using MimeKit;

namespace DailyAdjust.Service.Mail;

/// <summary>
/// An SMTP client that says when a message's text is about to go out, and knows whether all of it did. The end of the text is a line with a dot alone
/// (RFC 5321, 4.1.1.4): a server that has not seen it has kept nothing, one that has may have kept the message, whatever becomes of its answer.
/// </summary>
/// <param name="sent">What left this machine.</param>
/// <param name="handOver">Called once, after the server has agreed to the recipient and before it gets the text; throws to stop that.</param>
internal sealed class HandOverClient(SentBytes sent, Action handOver) : SmtpClient(sent)
{
    public bool IsHandedOver { get; private set; }

    public bool EndWasSent => IsHandedOver && sent.EndedWithDot;

    protected override void OnRecipientAccepted(MimeMessage message, MailboxAddress mailbox, SmtpResponse response)
    {
        handOver();
        IsHandedOver = true;
        base.OnRecipientAccepted(message, mailbox, response);
    }
}

/// <summary>Remembers the last bytes that were sent, and nothing else of them: they may hold the password.</summary>
internal sealed class SentBytes : IProtocolLogger
{
    private static readonly byte[] End = "\r\n.\r\n"u8.ToArray();

    private readonly Queue<byte> _last = new(End.Length);

    public IAuthenticationSecretDetector? AuthenticationSecretDetector { get; set; }

    /// <summary>The text's own lines never are a dot alone: each that begins with one is sent with two.</summary>
    public bool EndedWithDot => _last.SequenceEqual(End);

    public void LogConnect(Uri uri) => _last.Clear();

    public void LogClient(byte[] buffer, int offset, int count)
    {
        foreach (var sent in buffer.AsSpan(offset, count)[Math.Max(0, count - End.Length)..])
        {
            if (_last.Count == End.Length)
            {
                _last.Dequeue();
            }

            _last.Enqueue(sent);
        }
    }

    public void LogServer(byte[] buffer, int offset, int count)
    {
        // What the server says comes as a response.
    }

    public void Dispose()
    {
        // Holds nothing open.
    }
}
