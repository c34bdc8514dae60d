using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>A power cut came after the work on a sheet was begun and before anything of it was kept; the report hour is 05:00 on 10 June 2026 in Chicago.</summary>
[Trait("Promise", "1")]
public sealed class CutShortTests : IDisposable
{
    private static readonly DateTimeOffset Midnight = new(2026, 6, 10, 5, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Date = new(2026, 6, 10);

    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(Midnight);

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task The_service_finishes_it_and_makes_no_second_sheet()
    {
        var site = await Begun();

        Assert.Equal((true, false), await Looks(site, 4, 53));

        AssertOneSheet(site);
        Assert.DoesNotContain("was due at", Sheet(site), StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_that_is_late_by_then_says_so()
    {
        var site = await Begun();

        Assert.Equal((true, false), await Looks(site, 6, 30));

        AssertOneSheet(site);
        Assert.Contains("This sheet was due at 05:00 and was made at 06:30.", Sheet(site), StringComparison.Ordinal);
    }

    /// <summary>All that came in is taken, and the sheet is begun.</summary>
    private async Task<SiteFolder> Begun()
    {
        var folder = ExampleSite.PutInto(_home);
        var weather = Path.Combine(folder.Inbox, "yard-1.csv");
        File.WriteAllText(weather, ExampleSite.WeatherUntil("2026-06-10 04:00"));
        File.SetLastWriteTimeUtc(weather, Midnight.UtcDateTime);
        await Looks(folder, 4, 40);
        using var site = OpenSite.Open(folder, LedgerMode.Write);
        site.Ledger.Mornings.Begin(Date, ReportTime.Of(site.Newest, Date).Instant, CalculationVersions.Calculation, CalculationVersions.TimeZones);
        return folder;
    }

    /// <summary>Two looks of a service that has just been started, and whether each had news.</summary>
    private async Task<(bool First, bool Second)> Looks(SiteFolder site, int hour, int minute)
    {
        using var runner = new SiteRunner(site, new ServiceOptions(), _time, NullLogger.Instance);
        _time.SetUtcNow(Midnight.AddHours(hour).AddMinutes(minute));
        return (await runner.RunAsync(CancellationToken.None), await runner.RunAsync(CancellationToken.None));
    }

    private static void AssertOneSheet(SiteFolder folder)
    {
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var morning = Assert.Single(site.Ledger.Mornings.Of(Date));
        Assert.Equal((1, MorningStep.Written, ReportTime.Of(site.Newest, Date).Instant), (morning.Issue, morning.Step, morning.AsOf));
    }

    private static string Sheet(SiteFolder site) =>
        string.Join(' ', File.ReadAllText(Path.Combine(site.ReportFolder(Date), "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
