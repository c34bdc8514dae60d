using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Reports;
using MimeKit;

namespace DailyAdjust.Service.Mail;

/// <summary>One sheet as one message: text and page as two forms of the same, and the files to keep or fill in beside them.</summary>
internal static class SheetMessage
{
    /// <summary>What goes along, as far as it is there.</summary>
    public static IReadOnlyList<string> Attached { get; } = [ReportFiles.RoundCsv, ReportFiles.Html, ReportFiles.Print];

    /// <summary>
    /// The same at every try and after every restart, and another for every property, sheet and recipient; without angle brackets. Two installations may call
    /// their sites alike and mail from one address: name and place of the property tell them apart.
    /// </summary>
    public static string IdOf(string site, Site description, DateOnly date, int issue, string recipient, MailboxAddress from) => IdOf(
        string.Create(CultureInfo.InvariantCulture, $"{site}\n{description.Name}\n{description.LatitudeDeg:R}\n{description.LongitudeDeg:R}"), date, issue, recipient, from);

    /// <summary>The same of something else than a sheet.</summary>
    public static string IdOf(string site, DateOnly date, int issue, string recipient, MailboxAddress from)
    {
        // Folder names and addresses may hold anything; their hash is plain ASCII.
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{site}\n{recipient}")))[..20];
        return string.Create(CultureInfo.InvariantCulture, $"{date:yyyyMMdd}.{issue}.{hash}@{MailboxAddress.IdnMapping.Encode(from.Domain)}");
    }

    /// <param name="promised">What was promised.</param>
    /// <param name="from">The address that it comes from.</param>
    /// <param name="file">Finds a file of the sheet by its name; null = there is none.</param>
    public static MimeMessage Of(OutboxMessage promised, MailboxAddress from, Func<string, byte[]?> file)
    {
        var body = new Multipart("mixed")
        {
            new MultipartAlternative
            {
                Text("plain", Encoding.UTF8.GetString(file(ReportFiles.Text) ?? [])),
                Text("html", Encoding.UTF8.GetString(file(ReportFiles.Html) ?? [])),
            },
        };
        foreach (var name in Attached)
        {
            if (file(name) is { } bytes)
            {
                body.Add(new MimePart(MimeTypes.GetMimeType(name))
                {
                    Content = new MimeContent(new MemoryStream(bytes)),
                    ContentDisposition = new ContentDisposition(ContentDisposition.Attachment),
                    ContentTransferEncoding = ContentEncoding.Base64,
                    FileName = name,
                });
            }
        }

        return Headed(promised.MessageId, promised.Subject, from, MailboxAddress.Parse(promised.Recipient), promised.PromisedAt, body);
    }

    /// <summary>A message of this program to one recipient.</summary>
    /// <param name="subject">One line.</param>
    public static MimeMessage Headed(string id, string subject, MailboxAddress from, MailboxAddress to, DateTimeOffset date, MimeEntity body)
    {
        var message = new MimeMessage { MessageId = id, Subject = subject, Date = date, Body = body };
        message.From.Add(from);
        message.To.Add(to);

        // So that no absence note is sent back (RFC 3834).
        message.Headers.Add("Auto-Submitted", "auto-generated");
        return message;
    }

    public static TextPart Text(string kind, string text)
    {
        var part = new TextPart(kind);
        part.SetText(Encoding.UTF8, text);
        return part;
    }
}
