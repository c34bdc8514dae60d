using System.Net.Security;
using System.Security.Authentication;
using System.Security.Cryptography.X509Certificates;

namespace DailyAdjust.Service.Fetching;

/// <summary>Says in plain words why a server's certificate is not accepted; what the platform finds wrong is never let through.</summary>
internal static class PullCertificate
{
    private const X509ChainStatusFlags Stranger = X509ChainStatusFlags.UntrustedRoot | X509ChainStatusFlags.PartialChain;

    private const X509ChainStatusFlags WrongTime = X509ChainStatusFlags.NotTimeValid;

    /// <returns>Always true: there is nothing wrong.</returns>
    /// <exception cref="AuthenticationException">Something is; in words.</exception>
    public static bool Accept(object sender, X509Certificate? certificate, X509Chain? chain, SslPolicyErrors errors) =>
        errors == SslPolicyErrors.None ? true : throw new AuthenticationException(WhatIsWrong(chain, errors));

    /// <summary>What the platform finds wrong, in words.</summary>
    public static string WhatIsWrong(X509Chain? chain, SslPolicyErrors errors)
    {
        if (errors.HasFlag(SslPolicyErrors.RemoteCertificateNotAvailable))
        {
            return "it shows no certificate";
        }

        List<string> wrong = [];
        if (errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch))
        {
            wrong.Add("is for another name");
        }

        var found = (chain?.ChainStatus ?? []).Aggregate(X509ChainStatusFlags.NoError, (all, one) => all | one.Status);
        if ((found & WrongTime) != X509ChainStatusFlags.NoError)
        {
            wrong.Add("has expired or does not hold yet by this machine's clock");
        }

        if ((found & Stranger) != X509ChainStatusFlags.NoError)
        {
            wrong.Add("is signed by nobody whom this machine trusts");
        }

        if ((found & ~(WrongTime | Stranger)) is var other && other != X509ChainStatusFlags.NoError)
        {
            wrong.Add($"does not hold: {other}");
        }

        return wrong.Count == 0 ? "its certificate does not hold" : "its certificate " + string.Join(" and ", wrong);
    }
}
