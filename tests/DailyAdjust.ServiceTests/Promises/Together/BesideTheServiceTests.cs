using System.Globalization;
using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Promises.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Together;

/// <summary>Commands beside a running service, many at once.</summary>
[Trait("Promise", "6")]
public sealed class BesideTheServiceTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public BesideTheServiceTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        _site = ExampleSite.TakenIn(_home);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task Those_that_write_wait_their_turn_those_that_read_do_not_and_nothing_is_lost()
    {
        var rounds = Tried.Times(2, 25);
        using var service = new ServiceOn(_home);
        for (var round = 0; round < rounds; round++)
        {
            var notes = Enumerable.Range(0, 4).Select(i => Task.Run(() =>
                RunningProgram.Run("log", "note", $"number {round}-{i}", "--date", "2026-06-10", "--time", string.Create(CultureInfo.InvariantCulture, $"{round % 24:00}:{i:00}"), "--home", _home.Path)));
            var prints = new[] { "balance", "advice" }.Select(c => Task.Run(() => RunningProgram.Run(c, "--date", "2026-06-10", "--home", _home.Path)));
            Assert.All(await Task.WhenAll([.. notes, .. prints]), result => Assert.True(result.ExitCode == 0, result.ToString()));
        }

        Assert.Equal(0, service.Stop());
        Assert.Equal(
            (4 * rounds).ToString(CultureInfo.InvariantCulture), RawLedger.Scalar(_site.LedgerFile, "SELECT count(DISTINCT body ->> 'note') FROM logbook WHERE body ->> 'note' LIKE 'number %'"));
        Assert.True(RawLedger.IsWhole(_site.LedgerFile));
        Assert.DoesNotContain("held back", service.Said, StringComparison.Ordinal);
        Tried.Held(6, "commands beside the service", 6 * rounds);
    }
}
