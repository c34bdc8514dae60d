using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Mail;

/// <summary>The settings of mail with what they point to: password and trusted certificates.</summary>
public sealed class MailAccount
{
    private readonly X509Certificate2Collection _trusted;

    private MailAccount(MailOptions options, string? password, X509Certificate2Collection trusted)
    {
        Options = options;
        Password = password;
        _trusted = trusted;
    }

    public MailOptions Options { get; }

    /// <summary>Null = nobody logs in.</summary>
    internal string? Password { get; }

    /// <exception cref="WrongInputException">Password or certificates cannot be had, or others can read the password.</exception>
    public static MailAccount Open(MailOptions options, HomeFolder home) => new(
        options,
        options.User.Length == 0 ? null : MailPassword.Of(options, home, Environment.GetEnvironmentVariable),
        options.TrustedCertificateFile.Length == 0 ? [] : Trusted(Path.Combine(home.Path, options.TrustedCertificateFile)));

    /// <summary>Without the password, on one line.</summary>
    internal string Clean(string text) => Reports.Words.MailWords.OneLine(Password is null ? text : MailPassword.Scrub(text, Options.User, Password));

    /// <summary>What is wrong with a server's certificate, in words; null = nothing.</summary>
    internal string? WhatIsWrong(X509Certificate? certificate, X509Chain? chain, SslPolicyErrors errors)
    {
        if (errors == SslPolicyErrors.None)
        {
            return null;
        }

        if (errors == SslPolicyErrors.RemoteCertificateChainErrors && certificate is X509Certificate2 shown && _trusted.Count > 0 && LeadsToTrusted(shown, chain))
        {
            return null;
        }

        return PullCertificate.WhatIsWrong(chain, errors);
    }

    private static X509Certificate2Collection Trusted(string path)
    {
        var trusted = new X509Certificate2Collection();
        try
        {
            trusted.ImportFromPemFile(path);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new WrongInputException($"Mail: the certificates of {path} cannot be read: {failure.Message}", "TrustedCertificateFile is a PEM file (-----BEGIN CERTIFICATE-----).");
        }

        return trusted.Count > 0
            ? trusted
            : throw new WrongInputException($"Mail: {path} holds no certificate.", "TrustedCertificateFile is a PEM file (-----BEGIN CERTIFICATE-----).");
    }

    private bool LeadsToTrusted(X509Certificate2 shown, X509Chain? chain)
    {
        using var own = new X509Chain();
        own.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        own.ChainPolicy.CustomTrustStore.AddRange(_trusted);
        own.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        own.ChainPolicy.ApplicationPolicy.Add(ServerUse);
        foreach (var element in chain?.ChainElements ?? Enumerable.Empty<X509ChainElement>())
        {
            own.ChainPolicy.ExtraStore.Add(element.Certificate);
        }

        return own.Build(shown);
    }

    /// <summary>Extended key usage of a server (RFC 5280, 4.2.1.12: id-kp-serverAuth).</summary>
    private static readonly Oid ServerUse = new("1.3.6.1.5.5.7.3.1");
}
