using System.Net;
using System.Reflection;

namespace DailyAdjust.Service.Fetching;

/// <summary>The HTTP client of the process: no cookies; redirects and packed answers are the business of <see cref="PullAttempt"/>.</summary>
public static class PullClient
{
    private static readonly Lazy<HttpClient> Once = new(Create);

    public static HttpClient Shared => Once.Value;

    /// <summary>What servers see of us.</summary>
    public static string UserAgent { get; } =
        "DailyAdjust/" + (typeof(PullClient).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0");

    private static HttpClient Create() => new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        UseCookies = false,
        AutomaticDecompression = DecompressionMethods.None,
        PooledConnectionLifetime = TimeSpan.FromMinutes(2),
        SslOptions = { RemoteCertificateValidationCallback = PullCertificate.Accept },
    })
    {
        // Every question has a limit of its own.
        Timeout = Timeout.InfiniteTimeSpan,
    };
}
