using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>Certificates that sign themselves, made for one test.</summary>
internal static class TestCertificate
{
    /// <param name="host">The name or address that it is for.</param>
    /// <param name="days">For how long from yesterday on; 0 or less = it has expired.</param>
    public static X509Certificate2 For(string host, int days = 30)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        var request = new CertificateRequest("CN=" + host, key, HashAlgorithmName.SHA256);
        var names = new SubjectAlternativeNameBuilder();
        if (IPAddress.TryParse(host, out var address))
        {
            names.AddIpAddress(address);
        }
        else
        {
            names.AddDnsName(host);
        }

        request.CertificateExtensions.Add(names.Build());
        var end = DateTimeOffset.UtcNow.AddDays(days - 1);
        using var made = request.CreateSelfSigned(end.AddDays(-60), end);

        // Through a file's form: not every platform serves with a key that never was in one.
        return X509CertificateLoader.LoadPkcs12(made.Export(X509ContentType.Pkcs12), null);
    }
}
