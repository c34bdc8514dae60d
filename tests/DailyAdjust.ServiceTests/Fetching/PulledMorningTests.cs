using System.Diagnostics;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;
using static DailyAdjust.ServiceTests.Fetching.LocalServer;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>Pulls and mornings: what comes is used, and what does not come holds nobody up.</summary>
public sealed class PulledMorningTests : IDisposable
{
    /// <summary>04:50 on 10 June 2026 in Chicago.</summary>
    private static readonly DateTimeOffset WorkBegins = new(2026, 6, 10, 9, 50, 0, TimeSpan.Zero);

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(WorkBegins);
    private readonly ServiceOptions _options = new() { PollSeconds = 30 };

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task The_mornings_sheet_uses_what_its_own_pull_brought()
    {
        using var server = new LocalServer(Ok(ExampleSite.WeatherUntil("2026-06-10 04:00")));
        var site = WithPull(server);
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        await runner.RunAsync(CancellationToken.None);
        Assert.False(File.Exists(Report(site)));
        await UntilAsync(() => File.Exists(Path.Combine(site.Inbox, "yard-pulled.csv")));
        for (var look = 0; look < 2 && !File.Exists(Report(site)); look++)
        {
            // The file lies there a moment before its pull has ended.
            await Task.Delay(300);
            _time.Advance(TimeSpan.FromSeconds(20));
            await runner.RunAsync(CancellationToken.None);
        }

        Assert.Contains("2026-06-10/1", File.ReadAllText(Report(site)), StringComparison.Ordinal);
        Assert.DoesNotContain("as-set", File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "advice.csv")), StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(site.Taken, "yard-pulled.csv")));
    }

    [Fact]
    public async Task A_source_that_stalls_holds_the_sheet_up_for_a_minute_at_most_and_stands_on_it()
    {
        using var server = new LocalServer(Stall());
        var site = WithPull(server);
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        var looks = 0;
        for (; looks < 10 && !File.Exists(Report(site)); looks++)
        {
            await runner.RunAsync(CancellationToken.None);
            await UntilAsync(() => server.Questions.Count > 0);
            _time.Advance(TimeSpan.FromSeconds(29));
        }

        // The source's time limit is ten minutes: it still stalls.
        Assert.InRange(looks, 2, 3);
        Assert.Contains("The weather of station yard was asked for at 04:50 and has not come yet.", Flat(Report(site)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_source_that_stalls_holds_up_no_other_sites_sheet()
    {
        using var server = new LocalServer(Stall());
        WithPull(server);
        var other = _home.EmptySite("zinnia");
        File.Copy(Path.Combine(ExampleSite.Folder, "site", "site.yaml"), other.SiteFile);
        File.Copy(Path.Combine(ExampleSite.Folder, "site", "stations.csv"), other.StationsFile);

        using var process = RunningProgram.Start(new ProgramStart("morning", "--home", _home.Path, "--set", "PullWaitSeconds=60"));
        await UntilAsync(() => server.Questions.Count > 0 && Reports(other).Any());

        Assert.False(process.HasExited);
        process.Kill();
    }

    [Fact]
    public async Task Two_sources_do_not_wait_for_each_other_and_keep_their_own_interval()
    {
        using var stalls = new LocalServer(Stall());
        using var works = new LocalServer((count, _) => Ok(ExampleSite.WeatherUntil($"2026-06-0{count} 04:00")));
        var site = WithPull(stalls, second: works);
        _time.Advance(TimeSpan.FromHours(9));
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        for (var i = 1; i <= 3; i++)
        {
            await runner.RunAsync(CancellationToken.None);
            var count = i;
            await UntilAsync(() => works.Questions.Count == count && File.Exists(Path.Combine(site.Inbox, "barn-pulled.csv")));
            _time.Advance(TimeSpan.FromMinutes(2));
            await runner.RunAsync(CancellationToken.None);
            await Task.Delay(100);
            Assert.Equal(count, works.Questions.Count);
            _time.Advance(TimeSpan.FromMinutes(3.5));
        }

        // Its limit of ten minutes has passed once.
        Assert.InRange(stalls.Questions.Count, 1, 2);
    }

    [Fact]
    public void The_service_has_its_sheet_out_although_the_source_stalls()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        using var server = new LocalServer(Stall("HTTP/1.1 200 OK\r\nContent-Length: 99\r\n\r\nTime,"));
        var site = WithPull(server);
        Edit(site, "at: \"05:00\"", "at: \"00:00\"");
        using var service = RunningProgram.Start(new ProgramStart(
            "serve", "--home", _home.Path, "--set", "PollSeconds=1", "--set", "PullWaitSeconds=3"));
        var begun = Stopwatch.StartNew();
        try
        {
            while (begun.Elapsed < Patience && !Reports(site).Any())
            {
                Thread.Sleep(50);
            }

            Assert.Single(server.Questions);
            Assert.InRange(begun.Elapsed.TotalSeconds, 2, 20);
            Assert.Contains("as-set", File.ReadAllText(Reports(site).First()), StringComparison.Ordinal);
        }
        finally
        {
            using var kill = Process.Start("kill", ["-TERM", service.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
            kill!.WaitForExit();
            if (!service.WaitForExit(TimeSpan.FromSeconds(20)))
            {
                service.Kill();
            }
        }

        Assert.Equal(0, service.ExitCode);
    }

    [Fact]
    public void A_morning_by_hand_waits_no_longer_than_it_is_told()
    {
        using var server = new LocalServer(Stall());
        var site = WithPull(server);
        var begun = Stopwatch.StartNew();
        var morning = InProcess.Run("morning", "--home", _home.Path, "--set", "PullWaitSeconds=1");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        Assert.InRange(begun.Elapsed.TotalSeconds, 1, 20);
        Assert.NotEmpty(Reports(site));
        Assert.Contains("The weather of station yard could not be fetched since", morning.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_command_says_what_came_of_every_source()
    {
        using var server = new LocalServer((_, head) => head.Contains("If-None-Match", StringComparison.Ordinal) ? Status(304) : Ok(ExampleSite.WeatherUntil("2026-06-10 04:00"), "ETag: \"a\"\r\n"));
        using var broken = new LocalServer(Status(403));
        var site = WithPull(server, second: broken);
        var first = InProcess.Run("weather", "pull", "--home", _home.Path);
        Assert.Equal(1, first.ExitCode);
        Assert.Contains("tamarack yard: http://127.0.0.1", first.Output, StringComparison.Ordinal);
        Assert.Contains("in the inbox as yard-pulled.csv", first.Output, StringComparison.Ordinal);
        Assert.Contains("tamarack barn: " + broken.Address + ": failed: the server answers 403", first.Output, StringComparison.Ordinal);

        var morning = InProcess.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        Assert.Contains("The weather of station barn could not be fetched since", Flat(Report(site)), StringComparison.Ordinal);
        Assert.Contains("unchanged (304)", InProcess.Run("weather", "pull", "--home", _home.Path).Output, StringComparison.Ordinal);
    }

    private static IEnumerable<string> Reports(SiteFolder site) =>
        Directory.Exists(site.Reports) ? Directory.EnumerateFiles(site.Reports, "advice.csv", SearchOption.AllDirectories) : [];

    private static string Report(SiteFolder site) => Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt");

    private static string Flat(string file) => string.Join(' ', File.ReadAllText(file).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static void Edit(SiteFolder site, string from, string to)
    {
        var before = File.ReadAllText(site.SiteFile);
        Assert.Contains(from, before, StringComparison.Ordinal);
        File.WriteAllText(site.SiteFile, before.Replace(from, to, StringComparison.Ordinal));
    }

    private static async Task UntilAsync(Func<bool> happened)
    {
        var begun = Stopwatch.StartNew();
        while (!happened())
        {
            Assert.True(begun.Elapsed < Patience, "It did not happen.");
            await Task.Delay(20);
        }
    }

    /// <summary>The example site with a pull of its station and, if wanted, a second station like it.</summary>
    private SiteFolder WithPull(LocalServer server, LocalServer? second = null)
    {
        var site = ExampleSite.PutInto(_home);
        var yaml = File.ReadAllText(site.SiteFile);
        var begin = yaml.IndexOf("    - id: yard\n", StringComparison.Ordinal);
        var end = yaml.IndexOf("  gauges:", StringComparison.Ordinal);
        var station = yaml[begin..end];
        var stations = Pulled(station, server);
        if (second is not null)
        {
            stations += Pulled(station.Replace("id: yard", "id: barn", StringComparison.Ordinal).Replace("yard-*.csv", "barn-*.csv", StringComparison.Ordinal), second);
        }

        File.WriteAllText(site.SiteFile, yaml[..begin] + stations + yaml[end..]);
        return site;
    }

    private static string Pulled(string station, LocalServer server) =>
        station.TrimEnd() + $"\n      pull: {{ url: \"{server.Address}\", every: 5 min, timeout: 10 min }}\n";
}
