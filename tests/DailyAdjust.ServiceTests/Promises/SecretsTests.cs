using System.Text;
using DailyAdjust.ServiceTests.Fetching;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>What comes from the environment as a secret stands in no file of the home and on no terminal, at the wordiest log level and with a server that repeats it.</summary>
[Trait("Promise", "11")]
public sealed class SecretsTests : IDisposable
{
    private const string Token = "tk-5f3c-chalk-and-cheese";

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_header_of_a_source_stands_nowhere()
    {
        using var server = new LocalServer(LocalServer.Raw($"HTTP/1.1 403 No {Token}\r\nX-Seen: {Token}\r\nContent-Length: {Token.Length}\r\n\r\n", Encoding.ASCII.GetBytes(Token)));
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace(
            "      format: csv\n", $$"""      pull: { url: "{{server.Address}}", every: 5 min, headers: { Authorization: "Bearer ${STATION_TOKEN}" } }""" + "\n      format: csv\n", StringComparison.Ordinal));
        var result = RunningProgram.Run(new ProgramStart("morning", "--home", _home.Path, "--set", "LogLevel=Debug")
        {
            Variables = new Dictionary<string, string>(StringComparer.Ordinal) { ["STATION_TOKEN"] = Token },
        });
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Contains($"Bearer {Token}", Assert.Single(server.Questions.Take(1)), StringComparison.Ordinal);
        Assert.DoesNotContain(Token, result.ToString(), StringComparison.Ordinal);
        var holding = Directory.GetFiles(_home.Path, "*", SearchOption.AllDirectories).Where(file => File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.ASCII.GetBytes(Token)) >= 0);
        Assert.Empty(holding);
    }
}
