using System.Diagnostics;
using System.Security.Cryptography.X509Certificates;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Home;
using Xunit;
using static DailyAdjust.ServiceTests.Fetching.LocalServer;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>Pulls over TLS: a server that cannot be known is asked for nothing, and the sheet says why, in time.</summary>
public sealed class SecurePullTests : IDisposable
{
    private const string Csv = "Time,Temp (°F)\n2026-06-01 01:00,60.1\n";

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task A_redirect_from_https_to_http_is_not_followed()
    {
        using var certificate = TestCertificate.For("127.0.0.1");
        using var open = new LocalServer(Ok(Csv));
        using var secure = new LocalServer(Redirect(open.Address + "yard.csv")) { Certificate = certificate };
        using var http = Trusting(certificate);
        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(http, secure.Address));

        Assert.Equal($"the server redirects from https to http (127.0.0.1:{open.Port}), which is not followed", failure.Message);
        Assert.False(failure.Passing);
        Assert.Single(secure.Questions);
        Assert.Empty(open.Questions);
    }

    [Fact]
    public async Task A_redirect_from_http_to_https_is_followed_without_the_secrets()
    {
        using var certificate = TestCertificate.For("127.0.0.1");
        using var secure = new LocalServer(Ok(Csv)) { Certificate = certificate };
        using var open = new LocalServer(Redirect(secure.Address + "yard.csv"));
        using var http = Trusting(certificate);
        var answer = await AskAsync(http, open.Address);

        Assert.Equal(Csv, System.Text.Encoding.UTF8.GetString(answer.Bytes!));
        Assert.Contains("s3cret", Assert.Single(open.Questions), StringComparison.Ordinal);
        Assert.DoesNotContain("s3cret", Assert.Single(secure.Questions), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("127.0.0.1", 30, "its certificate is signed by nobody whom this machine trusts")]
    [InlineData("station.example", 30, "its certificate is for another name and is signed by nobody whom this machine trusts")]
    [InlineData("127.0.0.1", -3, "its certificate has expired or does not hold yet by this machine's clock and is signed by nobody whom this machine trusts")]
    public async Task A_certificate_that_does_not_hold_is_told_in_plain_words_and_nothing_is_asked(string host, int days, string why)
    {
        using var certificate = TestCertificate.For(host, days);
        using var server = new LocalServer(Ok(Csv)) { Certificate = certificate };
        var failure = await Assert.ThrowsAsync<PullException>(() => AskAsync(PullClient.Shared, server.Address));
        Assert.Equal($"no secure connection to 127.0.0.1 ({why})", failure.Message);
        Assert.False(failure.Passing);
        Assert.Empty(server.Questions);
    }

    [Fact]
    public void A_certificate_that_nobody_trusts_stands_on_the_sheet_and_holds_it_up_no_longer_than_the_rest()
    {
        using var certificate = TestCertificate.For("127.0.0.1");
        using var server = new LocalServer(Ok(Weather())) { Certificate = certificate };
        var site = WithPull(server);
        var begun = Stopwatch.StartNew();
        var morning = Morning();

        // The sheet does not wait the minute that it would give a server that may still answer.
        Assert.InRange(begun.Elapsed.TotalSeconds, 0, 30);
        Assert.Contains("as-set", Only(site, "advice.csv"), StringComparison.Ordinal);
        const string Why = "no secure connection to 127.0.0.1 (its certificate is signed by nobody whom this machine trusts)";
        Assert.Contains(Why, Flat(Only(site, "report-full.txt")), StringComparison.Ordinal);
        Assert.Contains("The weather of station yard could not be fetched since", Flat(Only(site, "report-full.txt")), StringComparison.Ordinal);
        Assert.Contains(Why, morning.Error, StringComparison.Ordinal);
        Assert.Empty(server.Questions);
    }

    /// <summary>The machine trusts both: it is the name alone that makes the difference.</summary>
    [Theory]
    [InlineData("127.0.0.1", null)]
    [InlineData("station.example", "no secure connection to 127.0.0.1 (its certificate is for another name)")]
    public void A_certificate_must_be_for_the_name_that_was_asked(string host, string? why)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Whom to trust is told by a variable of OpenSSL.");
        using var certificate = TestCertificate.For(host);
        using var server = new LocalServer(Ok(Weather())) { Certificate = certificate };
        var site = WithPull(server);
        var trusted = Path.Combine(_home.Path, "trusted.pem");
        File.WriteAllText(trusted, certificate.ExportCertificatePem());
        Morning(("SSL_CERT_FILE", trusted));

        var text = Flat(Only(site, "report-full.txt"));
        if (why is null)
        {
            Assert.Single(server.Questions);
            Assert.DoesNotContain("could not be fetched", text, StringComparison.Ordinal);
            Assert.True(File.Exists(Path.Combine(site.Taken, "yard-pulled.csv")));
        }
        else
        {
            Assert.Empty(server.Questions);
            Assert.Contains(why, text, StringComparison.Ordinal);
            Assert.False(File.Exists(Path.Combine(site.Taken, "yard-pulled.csv")));
        }
    }

    private static string Weather() => ExampleSite.WeatherUntil("2026-06-10 04:00");

    private static string Only(SiteFolder site, string name) => File.ReadAllText(Assert.Single(Directory.GetFiles(site.Reports, name, SearchOption.AllDirectories)));

    private static string Flat(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>The client of the program but for its trust in one certificate.</summary>
    private static HttpClient Trusting(X509Certificate2 certificate) => new(new SocketsHttpHandler
    {
        AllowAutoRedirect = false,
        SslOptions = { RemoteCertificateValidationCallback = (_, shown, _, _) => string.Equals(shown?.GetCertHashString(), certificate.GetCertHashString(), StringComparison.Ordinal) },
    });

    private static async Task<PullAnswer> AskAsync(HttpClient http, string address)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(20));
        return await new PullAttempt(http, TimeProvider.System).AskAsync(new(new Uri(address), [KeyValuePair.Create("Authorization", "Bearer s3cret")], null, 1_000_000), limit.Token);
    }

    private ProgramResult Morning(params (string Name, string Value)[] variables)
    {
        var morning = RunningProgram.Run(new ProgramStart("morning", "--home", _home.Path) { Variables = variables.ToDictionary(v => v.Name, v => v.Value, StringComparer.Ordinal) });
        Assert.True(morning.ExitCode == 0, morning.ToString());
        return morning;
    }

    private SiteFolder WithPull(LocalServer server)
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("  gauges:", $"      pull: {{ url: \"{server.Address}\", every: 30 min }}\n  gauges:", StringComparison.Ordinal));
        return site;
    }
}
