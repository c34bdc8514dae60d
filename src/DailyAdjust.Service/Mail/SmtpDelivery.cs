using System.Net.Sockets;
using DailyAdjust.Service.Configuration;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace DailyAdjust.Service.Mail;

/// <summary>One try to give one message to the server, within its time limit; every end of it has a meaning and words.</summary>
internal static class SmtpDelivery
{
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(5);

    /// <param name="account">The server and how to log in.</param>
    /// <param name="message">To one recipient.</param>
    /// <param name="handOver">Called before the text goes out; what it throws ends the try with nothing handed over, and is thrown.</param>
    /// <param name="stop">Ends the try as long as nothing is handed over; after that only the time limit does.</param>
    public static async Task<MailOutcome> SendAsync(MailAccount account, MimeMessage message, Action handOver, CancellationToken stop)
    {
        using var sent = new SentBytes();
        Exception? notKept = null;
        using var client = new HandOverClient(sent, () =>
        {
            try
            {
                handOver();
            }
            catch (Exception failure)
            {
                notKept = failure;
                throw;
            }
        });
        var limit = TimeSpan.FromSeconds(account.Options.TimeLimitSeconds);
        using var end = new CancellationTokenSource(limit);
        await using var stopping = stop.Register(() =>
        {
            if (!client.IsHandedOver)
            {
                end.Cancel();
            }
        }).ConfigureAwait(false);
        string? certificate = null;
        client.Timeout = (int)limit.TotalMilliseconds;

        // Asking for revocations would make a third server a condition of the morning's mail.
        client.CheckCertificateRevocation = false;
        client.ServerCertificateValidationCallback = (_, shown, chain, errors) => (certificate = account.WhatIsWrong(shown, chain, errors)) is null;
        var isTalking = false;
        try
        {
            await client.ConnectAsync(account.Options.Server, account.Options.UsedPort, Security(account.Options), end.Token).ConfigureAwait(false);
            if (account.Password is { } password)
            {
                await client.AuthenticateAsync(account.Options.User, password, end.Token).ConfigureAwait(false);
            }

            // Sent in chunks, the text has no end that could be told.
            client.Capabilities &= ~SmtpCapabilities.Chunking;
            isTalking = true;
            var answer = await client.SendAsync(message, end.Token).ConfigureAwait(false);
            await LeaveAsync(patience => client.DisconnectAsync(quit: true, patience)).ConfigureAwait(false);
            return new(MailResult.Taken, account.Clean(answer));
        }
        catch (Exception) when (notKept is not null)
        {
            throw notKept;
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested && !client.EndWasSent)
        {
            return new(MailResult.NotTaken, "the program was stopped", IsOfServer: true);
        }
        catch (Exception failure) when (IsOfMail(failure))
        {
            var outcome = Judge(failure, isTalking, client.EndWasSent);
            var words = Words(failure, account, certificate);
            return outcome with
            {
                Said = account.Clean(outcome.Result == MailResult.Doubtful ? $"the line broke after the whole text and before the server's answer ({words})" : words),
            };
        }
    }

    /// <summary>Failures of the line, the server and the message; anything else is a mistake of this program.</summary>
    private static bool IsOfMail(Exception failure) => failure is IOException or SocketException or OperationCanceledException or TimeoutException
        or CommandException or ProtocolException or AuthenticationException or SslHandshakeException or NotSupportedException or ServiceNotAuthenticatedException or ServiceNotConnectedException;

    private static MailOutcome Judge(Exception failure, bool isTalking, bool endWasSent) => failure switch
    {
        _ when !isTalking => new(MailResult.NotTaken, "", IsOfServer: true),
        SmtpCommandException { ErrorCode: SmtpErrorCode.SenderNotAccepted } => new(MailResult.NotTaken, "", IsOfServer: true),
        SmtpCommandException { StatusCode: >= SmtpStatusCode.SyntaxError } or NotSupportedException => new(MailResult.Refused, ""),
        SmtpCommandException => new(MailResult.NotTaken, ""),
        _ when endWasSent => new(MailResult.Doubtful, "", IsOfServer: true),
        _ => new(MailResult.NotTaken, "", IsOfServer: true),
    };

    private static string Words(Exception failure, MailAccount account, string? certificate)
    {
        var server = FormattableString.Invariant($"{account.Options.Server}:{account.Options.UsedPort}");
        return failure switch
        {
            SslHandshakeException when certificate is not null => $"{server} is not trusted: {certificate}",
            SslHandshakeException => $"the encrypted line to {server} cannot be made ({failure.InnerException?.Message ?? failure.Message})",
            AuthenticationException => $"{server} does not accept the login of {account.Options.User} ({failure.Message})",
            ServiceNotAuthenticatedException => $"{server} wants a login, and none is set (User, and its password)",
            SmtpCommandException told => FormattableString.Invariant($"{server} answers {(int)told.StatusCode} {told.Message}"),
            NotSupportedException => $"{server} does not offer what is needed ({failure.Message})",
            OperationCanceledException or TimeoutException => FormattableString.Invariant($"{server} did not finish within {account.Options.TimeLimitSeconds} s"),
            _ => $"the line to {server} failed ({failure.Message})",
        };
    }

    private static SecureSocketOptions Security(MailOptions mail) => mail.Security switch
    {
        MailOptions.Tls => SecureSocketOptions.SslOnConnect,
        MailOptions.None => SecureSocketOptions.None,
        _ => SecureSocketOptions.StartTls,
    };

    /// <summary>The message is taken; how the line ends changes nothing, whatever goes wrong: an answer that is thrown away sends the mail again.</summary>
    /// <param name="hangUp">Says good-bye within a time.</param>
    internal static async Task LeaveAsync(Func<CancellationToken, Task> hangUp)
    {
        try
        {
            using var patience = new CancellationTokenSource(Farewell);
            await hangUp(patience.Token).ConfigureAwait(false);
        }
        catch (Exception failure) when (failure is not OutOfMemoryException)
        {
            // It hung up first.
        }
    }
}
