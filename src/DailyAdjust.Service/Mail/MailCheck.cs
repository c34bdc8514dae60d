using System.Net;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using MimeKit;

namespace DailyAdjust.Service.Mail;

/// <summary>What is wrong with the settings of mail, in words.</summary>
public static class MailCheck
{
    private const int LargestPort = 65535;
    private const int LongestLimit = 600;
    private const int LongestRetry = 3600;
    private const int LongestAge = 72;

    /// <summary>Of the settings themselves: every problem, each with what to do.</summary>
    public static IReadOnlyList<string> Problems(MailOptions mail) =>
        [.. Server(mail), .. Security(mail), .. Login(mail), .. Recipients(mail), .. Limits(mail)];

    /// <summary>Recipients of sites that are not there (yet): a folder may be copied in later, a slip of the pen never matches.</summary>
    public static IReadOnlyList<string> UnknownSites(MailOptions mail, HomeFolder home)
    {
        var known = home.Sites().Select(s => s.Name).ToHashSet(StringComparer.Ordinal);
        return
        [
            .. mail.Recipients.SelectMany(r => r.Sites.Where(site => !known.Contains(site)).Select(site =>
                $"Mail: {r.To} is to get the sheets of \"{site}\", and there is no such site in {home.SitesFolder}. A site is called by the name of its folder.")),
        ];
    }

    /// <summary>Whether a server can only be this machine.</summary>
    public static bool IsThisMachine(string server) =>
        string.Equals(server, "localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(server, out var address) && IPAddress.IsLoopback(address));

    /// <summary>An address with a domain; null = it is none.</summary>
    internal static MailboxAddress? Address(string text) =>
        !text.Any(char.IsControl) && MailboxAddress.TryParse(text, out var address) && address.Domain.Length > 0 ? address : null;

    private static IEnumerable<string> Server(MailOptions mail)
    {
        if (mail.Server.Length == 0 || mail.Server.Any(c => char.IsWhiteSpace(c) || char.IsControl(c)))
        {
            yield return "Server is missing: the name of the SMTP server, as in \"smtp.example.net\".";
        }

        if (mail.Port is < 1 or > LargestPort)
        {
            yield return FormattableString.Invariant($"Port {mail.Port} is not 1 to {LargestPort}. Without it the usual one is used.");
        }

        if (Address(mail.From) is null)
        {
            yield return $"From \"{mail.From}\" is no address. Write it as \"sheets@example.net\" or \"Irrigation <sheets@example.net>\".";
        }
    }

    private static IEnumerable<string> Security(MailOptions mail)
    {
        switch (mail.Security)
        {
            case MailOptions.StartTls or MailOptions.Tls:
                break;
            case MailOptions.None when IsThisMachine(mail.Server):
                break;
            case MailOptions.None when !mail.AllowUnencrypted:
                yield return $"Security \"none\" would send the sheets to {mail.Server} for anybody on the way to read and change. Use \"starttls\" or \"tls\"; if the line is yours alone, say AllowUnencrypted: true.";
                break;
            case MailOptions.None when mail.User.Length > 0:
                yield return $"Security \"none\" would send the password to {mail.Server} for anybody on the way to read. Use \"starttls\" or \"tls\", or a server that wants no login.";
                break;
            case MailOptions.None:
                break;
            default:
                yield return $"Security \"{mail.Security}\" is none of \"starttls\", \"tls\" and \"none\".";
                break;
        }
    }

    private static IEnumerable<string> Login(MailOptions mail)
    {
        if (mail.User.Length == 0 && mail.PasswordFile.Length > 0)
        {
            yield return "PasswordFile is there and User is missing: say who logs in.";
        }
    }

    private static IEnumerable<string> Recipients(MailOptions mail)
    {
        if (mail.Recipients.Count == 0)
        {
            yield return "Recipients is empty: say who gets the sheets, as in [ { \"To\": \"super@example.net\" } ].";
        }

        var known = new List<(string Address, RecipientOptions Recipient)>();
        foreach (var recipient in mail.Recipients)
        {
            if (Address(recipient.To) is not { } address)
            {
                yield return $"To \"{recipient.To}\" is not one address. Write one address a recipient, as in \"super@example.net\".";
                continue;
            }

            if (known.Exists(k => string.Equals(k.Address, address.Address, StringComparison.OrdinalIgnoreCase) && Overlap(k.Recipient, recipient)))
            {
                yield return $"{address.Address} stands twice among the recipients of one site: it would get every sheet twice.";
            }

            known.Add((address.Address, recipient));
        }
    }

    private static bool Overlap(RecipientOptions one, RecipientOptions other) =>
        one.Sites.Count == 0 || other.Sites.Count == 0 || one.Sites.Intersect(other.Sites, StringComparer.Ordinal).Any();

    private static IEnumerable<string> Limits(MailOptions mail)
    {
        (string Key, int Value, int Least, int Most)[] limits =
        [
            (nameof(mail.TimeLimitSeconds), mail.TimeLimitSeconds, 1, LongestLimit),
            (nameof(mail.RetrySeconds), mail.RetrySeconds, 1, LongestRetry),
            (nameof(mail.GiveUpAfterHours), mail.GiveUpAfterHours, 1, LongestAge),
        ];
        foreach (var (key, value, least, most) in limits.Where(l => l.Value < l.Least || l.Value > l.Most))
        {
            yield return FormattableString.Invariant($"{key} {value} is not {least} to {most}.");
        }
    }
}
