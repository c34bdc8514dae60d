namespace DailyAdjust.Service.Configuration;

/// <summary>How sheets are mailed and to whom; every key is explained in docs/mail.md and stands in deploy/appsettings.mail.sample.json.</summary>
public sealed class MailOptions
{
    /// <summary>The SMTP server's name or address.</summary>
    public string Server { get; set; } = "";

    /// <summary>Null = the usual one: 587 for starttls, 465 for tls, 25 for none.</summary>
    public int? Port { get; set; }

    /// <summary>starttls: the line is encrypted before anything is said; tls: from the first byte; none: not at all, on this machine only.</summary>
    public string Security { get; set; } = StartTls;

    /// <summary>Whether `none` is meant for a server that is not this machine.</summary>
    public bool AllowUnencrypted { get; set; }

    /// <summary>PEM file of certificates that are trusted besides those of this machine; empty = none.</summary>
    public string TrustedCertificateFile { get; set; } = "";

    /// <summary>Who logs in; empty = nobody.</summary>
    public string User { get; set; } = "";

    /// <summary>The file that holds the password alone, readable by its owner only; empty = the variable <see cref="Mail.MailPassword.Variable"/> holds it.</summary>
    public string PasswordFile { get; set; } = "";

    /// <summary>The address that the mail comes from.</summary>
    public string From { get; set; } = "";

    /// <summary>Who gets what.</summary>
    public IReadOnlyList<RecipientOptions> Recipients { get; set; } = [];

    /// <summary>The most time that one message may take, seconds.</summary>
    public int TimeLimitSeconds { get; set; } = 60;

    /// <summary>The pause after the first failed try, seconds; it doubles with each, up to an hour.</summary>
    public int RetrySeconds { get; set; } = 60;

    /// <summary>When a message that nobody took is given up, hours after its sheet.</summary>
    public int GiveUpAfterHours { get; set; } = 24;

    internal const string StartTls = "starttls";
    internal const string Tls = "tls";
    internal const string None = "none";

    /// <summary>The port in use.</summary>
    internal int UsedPort => Port ?? Security switch
    {
        Tls => 465,
        None => 25,
        _ => 587,
    };
}

/// <summary>One recipient.</summary>
public sealed class RecipientOptions
{
    /// <summary>One address.</summary>
    public string To { get; set; } = "";

    /// <summary>Names of site folders; empty = all sites.</summary>
    public IReadOnlyList<string> Sites { get; set; } = [];

    /// <summary>Only sheets that ask for something.</summary>
    public bool OnlyIfChanges { get; set; }

    /// <summary>Whether the sheets of a site are meant for this recipient.</summary>
    internal bool Wants(string site) => Sites.Count == 0 || Sites.Contains(site, StringComparer.Ordinal);
}
