using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Health;
using DailyAdjust.Service.Hosting;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>The worker on a clock that the test turns.</summary>
public sealed class PollWorkerTests : IDisposable
{
    /// <summary>04:49 on 10 June 2026 in Chicago.</summary>
    private static readonly DateTimeOffset BeforeWork = new(2026, 6, 10, 9, 49, 0, TimeSpan.Zero);

    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(BeforeWork);
    private readonly Host _host = new();
    private readonly ServiceOptions _options = new() { PollSeconds = 30 };

    public void Dispose()
    {
        _host.Dispose();
        _home.Dispose();
    }

    [Fact]
    public async Task The_sheet_is_made_ten_minutes_before_the_hour_and_once()
    {
        var site = ExampleSite.TakenIn(_home);
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        var report = Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "advice.json");
        await runner.RunAsync(CancellationToken.None);
        Assert.False(File.Exists(report));
        _time.Advance(TimeSpan.FromMinutes(1));
        await runner.RunAsync(CancellationToken.None);
        Assert.Contains("\"asOf\": \"2026-06-10T10:00:00Z", File.ReadAllText(report), StringComparison.Ordinal);
        var made = File.GetLastWriteTimeUtc(report);
        _time.Advance(TimeSpan.FromMinutes(30));
        await runner.RunAsync(CancellationToken.None);
        Assert.Equal(made, File.GetLastWriteTimeUtc(report));
    }

    [Fact]
    public async Task A_clock_that_is_set_back_issues_nothing_twice_and_forward_misses_nothing()
    {
        var site = ExampleSite.TakenIn(_home);
        _time.Advance(TimeSpan.FromMinutes(5));
        using (var runner = new SiteRunner(site, _options, _time, NullLogger.Instance))
        {
            await runner.RunAsync(CancellationToken.None);
        }

        var setBack = new FakeTimeProvider(BeforeWork.AddHours(-6));
        using (var runner = new SiteRunner(site, _options, setBack, NullLogger.Instance))
        {
            await runner.RunAsync(CancellationToken.None);
            Assert.False(Directory.Exists(site.ReportFolder(new DateOnly(2026, 6, 9))));
            setBack.Advance(TimeSpan.FromDays(2).Add(TimeSpan.FromHours(6)).Add(TimeSpan.FromMinutes(5)));
            await runner.RunAsync(CancellationToken.None);
        }

        Assert.False(Directory.Exists(site.ReportFolder(new DateOnly(2026, 6, 11))));
        Assert.True(Directory.Exists(site.ReportFolder(new DateOnly(2026, 6, 12))));
    }

    [Fact]
    public async Task New_input_before_the_round_is_done_makes_the_next_issue_only_if_a_line_changes()
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(Path.Combine(site.Inbox, "yard-1.csv"), ExampleSite.WeatherUntil("2026-06-10 04:00"));
        Age(Path.Combine(site.Inbox, "yard-1.csv"));
        _time.Advance(TimeSpan.FromMinutes(2));
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        await runner.RunAsync(CancellationToken.None);
        var folder = site.ReportFolder(new DateOnly(2026, 6, 10));
        Assert.Contains("2026-06-10/1", File.ReadAllText(Path.Combine(folder, "report-full.txt")), StringComparison.Ordinal);

        Drop("logbook-note.csv", "2026-06-10 05:20,note,site,,,,,dew on the greens");
        _time.Advance(TimeSpan.FromMinutes(40));
        await runner.RunAsync(CancellationToken.None);
        Assert.Contains("2026-06-10/1", File.ReadAllText(Path.Combine(folder, "report-full.txt")), StringComparison.Ordinal);

        Drop("logbook-off.csv", "2026-06-10 05:25,off,C1/P2,,,,,leak");
        _time.Advance(TimeSpan.FromMinutes(10));
        await runner.RunAsync(CancellationToken.None);
        Assert.Contains("2026-06-10/2", File.ReadAllText(Path.Combine(folder, "report-full.txt")), StringComparison.Ordinal);

        void Drop(string name, string row)
        {
            var path = Path.Combine(site.Inbox, name);
            File.WriteAllText(path, "time,kind,where,value,unit,until,by,note\n" + row + "\n");
            Age(path);
        }
    }

    [Fact]
    public async Task A_worker_that_fails_says_so_and_stops_the_host()
    {
        // A file where the folder of sites should be, which turns into a failure no site is to blame for.
        using var sites = new SiteRunners(_home.Home, _options, _time, NullLogger<SiteRunner>.Instance);
        ExampleSite.TakenIn(_home);
        var work = new SiteWork(new HomeIndex(_home.Home, NullLogger.Instance), new MorningBeat(_home.Home, _time, NullLogger<MorningBeat>.Instance), NullLogger<SiteWork>.Instance);
        var schedule = new MorningSchedule(new NoSchedulers(), _options, NullLogger<MorningSchedule>.Instance);
        var failure = new ServiceFailure(_host, NullLogger<ServiceFailure>.Instance);
        using var worker = new PollWorker(sites, work, schedule, new Watchdog(null, _time), _options, _time, failure);
        await worker.StartAsync(CancellationToken.None);
        await worker.ExecuteTask!.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.IsType<NotSupportedException>(failure.What);
        Assert.True(_host.ApplicationStopping.IsCancellationRequested);
    }

    private static void Age(string path) => File.SetLastWriteTimeUtc(path, BeforeWork.UtcDateTime.AddHours(-1));

    private sealed class Host : IHostApplicationLifetime, IDisposable
    {
        private readonly CancellationTokenSource _stopping = new();

        public CancellationToken ApplicationStarted => CancellationToken.None;

        public CancellationToken ApplicationStopping => _stopping.Token;

        public CancellationToken ApplicationStopped => CancellationToken.None;

        public void StopApplication() => _stopping.Cancel();

        public void Dispose() => _stopping.Dispose();
    }
}
