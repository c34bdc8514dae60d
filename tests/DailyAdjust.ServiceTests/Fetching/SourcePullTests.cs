using DailyAdjust.Core.Sites;
using DailyAdjust.Service.Fetching;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;
using static DailyAdjust.ServiceTests.Fetching.LocalServer;

namespace DailyAdjust.ServiceTests.Fetching;

/// <summary>A source's pull from question to inbox: dates, repetitions, memory, and what is told.</summary>
public sealed class SourcePullTests : IDisposable
{
    private const string Csv = "Time,Temp (°F)\n2026-06-01 01:00,60.1\n";

    /// <summary>A file that the example site's yard station could have written.</summary>
    private static readonly string Weather = ExampleSite.WeatherUntil("2026-06-05 04:00");

    private static readonly PullLimits Quick = new()
    {
        FirstDelay = TimeSpan.FromMilliseconds(10),
        LongestDelay = TimeSpan.FromSeconds(2),
        BreakAfter = 6,
        Break = TimeSpan.FromMilliseconds(700),
    };

    private readonly TestHome _home = new();
    private readonly SiteFolder _folder;
    private readonly PullMemory _memory;

    public SourcePullTests()
    {
        _folder = ExampleSite.TakenIn(_home);
        Directory.CreateDirectory(_folder.Inbox);
        _memory = new(_folder);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task A_new_file_lies_whole_in_the_inbox_and_the_next_look_takes_it()
    {
        using var server = new LocalServer(Ok(Csv));
        Assert.Equal(PullOutcome.New, (await RunAsync(Of(server.Address))).Outcome);
        Assert.Equal(Csv, File.ReadAllText(Path.Combine(_folder.Inbox, "yard-pulled.csv")));
        Assert.Single(Directory.GetFileSystemEntries(_folder.Inbox, "*", new EnumerationOptions { AttributesToSkip = FileAttributes.Directory }));
        Assert.Single(new Inbox(_folder, TimeProvider.System).Look().Ready);
    }

    [Fact]
    public async Task After_500_and_429_it_asks_again_and_waits_as_long_as_the_server_says()
    {
        using var server = new LocalServer(Status(500), Status(429, "Retry-After: 1\r\n"), Ok(Csv));
        var begun = TimeProvider.System.GetTimestamp();
        Assert.Equal(PullOutcome.New, (await RunAsync(Of(server.Address))).Outcome);
        Assert.InRange(TimeProvider.System.GetElapsedTime(begun).TotalSeconds, 1, 15);
        Assert.Equal(3, server.Questions.Count);
    }

    [Fact]
    public async Task A_server_that_wants_to_be_left_alone_for_long_is_left_alone()
    {
        using var server = new LocalServer(Status(429, "Retry-After: 900\r\n"));
        var pull = Of(server.Address);
        Assert.Contains("answers 429", (await RunAsync(pull)).What, StringComparison.Ordinal);
        Assert.Contains("answers 429", (await RunAsync(pull)).What, StringComparison.Ordinal);
        Assert.Single(server.Questions);
    }

    [Fact]
    public async Task What_no_repetition_helps_is_asked_once()
    {
        using var server = new LocalServer(Status(401));
        Assert.Equal("the server answers 401", (await RunAsync(Of(server.Address))).What);
        Assert.Single(server.Questions);
    }

    [Fact]
    public async Task After_many_failures_it_rests_and_then_tries_again()
    {
        using var server = new LocalServer((count, _) => count <= 6 ? Status(500) : Ok(Csv));
        var pull = Of(server.Address);
        await RunAsync(pull);
        await RunAsync(pull);
        Assert.Equal(6, server.Questions.Count);
        var resting = await RunAsync(pull);
        Assert.Equal((PullOutcome.Failed, "the server answers 500"), (resting.Outcome, resting.What));
        Assert.Equal(6, server.Questions.Count);
        Assert.Equal(PullOutcome.New, (await RunAsync(pull, anyway: true)).Outcome);
    }

    [Fact]
    public async Task A_server_that_stalls_or_drips_is_given_up_after_its_time()
    {
        using var stalls = new LocalServer(Stall("HTTP/1.1 200 OK\r\nContent-Length: 100\r\n\r\nTime,"));
        var limits = Quick with { Retries = 1 };
        Assert.Equal("the server gave no whole answer within 0.4 s", (await RunAsync(Of(stalls.Address, timeoutSeconds: 0.4, limits: limits))).What);
        Assert.Equal(2, stalls.Questions.Count);
        using var drips = new LocalServer(async (stream, stop) =>
        {
            await stream.WriteAsync("HTTP/1.1 200 OK\r\nContent-Length: 100000\r\n\r\n"u8.ToArray(), stop);
            for (var i = 0; i < 100_000; i++)
            {
                await stream.WriteAsync("7"u8.ToArray(), stop);
                await Task.Delay(20, stop);
            }
        });
        Assert.Equal(PullOutcome.Failed, (await RunAsync(Of(drips.Address, timeoutSeconds: 0.4, limits: limits))).Outcome);
        Assert.Empty(Directory.GetFiles(_folder.Inbox));
    }

    [Fact]
    public async Task The_memory_of_what_was_seen_outlives_the_process_and_rests_on_the_ledger()
    {
        using var server = new LocalServer((_, head) =>
            head.Contains("If-None-Match: \"e1\"", StringComparison.Ordinal) ? Status(304) : Ok(Weather, "ETag: \"e1\"\r\n"));
        await RunAsync(Of(server.Address));
        Assert.Equal(PullOutcome.Waiting, (await RunAsync(Of(server.Address))).Outcome);
        Assert.Single(server.Questions);

        // Taken: the ledger has it, and another process asks by the mark.
        TakeInbox();
        Assert.Equal("unchanged (304)", (await RunAsync(Of(server.Address))).What);

        // Another ledger, as after a restore: everything is asked for anew.
        foreach (var file in Directory.GetFiles(_folder.Path, "ledger.*"))
        {
            File.Delete(file);
        }

        Assert.Equal(PullOutcome.New, (await RunAsync(Of(server.Address))).Outcome);
    }

    [Fact]
    public async Task A_length_that_is_too_small_cuts_a_row_that_then_does_not_count_and_comes_whole_the_next_time()
    {
        // HTTP knows no other end than the length that was said (RFC 9112 section 6.3); the cut falls into a temperature.
        var whole = System.Text.Encoding.UTF8.GetBytes(Weather);
        var rows = Weather.Split('\n').Length - 2;
        var cut = Weather.LastIndexOf("2026-06-05 04:00", StringComparison.Ordinal) + "2026-06-05 04:00,6".Length + (whole.Length - Weather.Length);
        using var server = new LocalServer(
            Raw(FormattableString.Invariant($"HTTP/1.1 200 OK\r\nContent-Length: {cut}\r\n\r\n"), whole), Ok(whole));
        await RunAsync(Of(server.Address));
        Assert.Equal(cut, new FileInfo(Path.Combine(_folder.Inbox, "yard-pulled.csv")).Length);
        var first = InProcess.Run("ingest", "--home", _home.Path, Path.Combine(_folder.Inbox, "yard-pulled.csv"));
        Assert.Contains(FormattableString.Invariant($"{rows - 1} rows read"), first.Output, StringComparison.Ordinal);
        Assert.Contains("1 refused", first.Output, StringComparison.Ordinal);
        TakeInbox();
        Assert.Equal(PullOutcome.New, (await RunAsync(Of(server.Address))).Outcome);
        Assert.Equal(whole, File.ReadAllBytes(Path.Combine(_folder.Inbox, "yard-pulled.csv")));
    }

    [Fact]
    public async Task The_same_bytes_again_without_any_mark_are_no_news_even_if_they_were_refused()
    {
        using var server = new LocalServer(Ok("this,is\nno,weather\n"));
        await RunAsync(Of(server.Address));
        TakeInbox();
        Assert.True(File.Exists(Path.Combine(_folder.Refused, "yard-pulled.csv")));
        Assert.Equal("unchanged (the same bytes again)", (await RunAsync(Of(server.Address))).What);
        Assert.Empty(Directory.GetFiles(_folder.Inbox));
    }

    [Fact]
    public async Task Dates_are_those_of_the_sites_calendar_and_the_days_before_come_first()
    {
        // 03:30 UTC on 2 June is still 1 June in Chicago.
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 6, 2, 3, 30, 0, TimeSpan.Zero));
        using var server = new LocalServer((_, head) => head.Contains("20260601", StringComparison.Ordinal) ? Status(404) : Ok(head));
        var pull = Of(server.Address + "{yyyyMMdd}.csv", file: "yard-{yyyy-MM-dd}.csv", daysBack: 2, time: time);
        var results = await pull.RunAsync(Site, anyway: false, CancellationToken.None);
        Assert.Equal([PullOutcome.New, PullOutcome.New, PullOutcome.NotYet], results.Select(r => r.Outcome));
        Assert.Equal(["GET /20260530.csv", "GET /20260531.csv", "GET /20260601.csv"], server.Questions.Select(q => q.Split(" HTTP", 2)[0]));
        Assert.Equal(["yard-2026-05-30.csv", "yard-2026-05-31.csv"], Directory.GetFiles(_folder.Inbox).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.Null(_memory.Failing("yard"));
    }

    [Fact]
    public async Task Where_no_days_file_is_there_it_is_a_failure()
    {
        using var server = new LocalServer(Status(404));
        var pull = Of(server.Address + "{yyyyMMdd}.csv", file: "yard-{yyyy-MM-dd}.csv", daysBack: 2);
        await pull.RunAsync(Site, anyway: false, CancellationToken.None);
        Assert.Contains("none of the days", _memory.Failing("yard")!.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(12 * 60)]
    [InlineData(24 * 60)]
    public async Task Every_interval_that_site_yaml_allows_can_be_asked(int minutes)
    {
        using var server = new LocalServer(Ok(Csv));
        var source = Source(server.Address);
        source = source with { Pull = source.Pull! with { Every = TimeSpan.FromMinutes(minutes) } };
        using var pulls = new SitePulls(_folder, Tools(Quick, TimeProvider.System));
        var result = Assert.Single(await pulls.NowAsync(Site with { Weather = Site.Weather with { Stations = [source] } }, null, CancellationToken.None));
        Assert.Equal((PullOutcome.New, true), (result.Outcome, result.What.StartsWith("new", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_name_that_lies_in_the_inbox_already_is_never_written_over()
    {
        using var server = new LocalServer(Ok(Csv));
        var mine = Path.Combine(_folder.Inbox, "yard-pulled.csv");
        File.WriteAllText(mine, "somebody's own");
        Assert.Equal(PullOutcome.Waiting, (await RunAsync(Of(server.Address))).Outcome);
        Assert.Equal("somebody's own", File.ReadAllText(mine));
        Assert.Empty(server.Questions);
    }

    [Fact]
    public async Task A_failure_is_told_once_kept_with_its_first_hour_and_gone_when_it_works()
    {
        using var server = new LocalServer((count, _) => count <= 2 ? Status(403) : Ok(Csv));
        var time = new FakeTimeProvider(new DateTimeOffset(2026, 6, 10, 9, 10, 0, TimeSpan.Zero));
        var log = new ListLog();
        using var pulls = new SitePulls(_folder, new PullTools { Time = time, Log = log, Limits = Quick });
        var site = Site with { Weather = Site.Weather with { Stations = [Source(server.Address)] } };
        await pulls.NowAsync(site, null, CancellationToken.None);
        time.Advance(TimeSpan.FromMinutes(30));
        await pulls.NowAsync(site, null, CancellationToken.None);
        Assert.Equal("The weather of station yard could not be fetched since 04:10: the server answers 403.", Assert.Single(pulls.Notices(site)));
        Assert.Single(log.Lines, line => line.StartsWith("Warning", StringComparison.Ordinal));
        await pulls.NowAsync(site, null, CancellationToken.None);
        Assert.Empty(pulls.Notices(site));
        Assert.Contains(log.Lines, line => line.Contains("can be pulled again", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_missing_variable_fails_its_source_and_no_secret_reaches_log_or_disk()
    {
        using var server = new LocalServer(Status(500));
        var source = Source(server.Address + "a.csv?key=hidden");
        source = source with { Pull = source.Pull! with { Headers = [KeyValuePair.Create("Authorization", "Bearer ${STATION_TOKEN}")] } };
        var log = new ListLog();
        PullTools Tools(string? token) => new() { Time = TimeProvider.System, Log = log, Limits = Quick, Variable = _ => token };
        var missing = await new SourcePull(_folder, source, _memory, Tools(null)).RunAsync(Site, anyway: false, CancellationToken.None);
        Assert.Contains("STATION_TOKEN", Assert.Single(missing).What, StringComparison.Ordinal);
        Assert.Empty(server.Questions);
        var there = await new SourcePull(_folder, source, _memory, Tools("s3cret")).RunAsync(Site, anyway: false, CancellationToken.None);
        Assert.Contains("Authorization: Bearer s3cret", server.Questions[0], StringComparison.Ordinal);
        Assert.DoesNotContain("hidden", Assert.Single(there).Address, StringComparison.Ordinal);
        Assert.DoesNotContain(log.Lines, line => line.Contains("s3cret", StringComparison.Ordinal) || line.Contains("hidden", StringComparison.Ordinal));
        Assert.DoesNotContain("s3cret", File.ReadAllText(Path.Combine(_folder.Path, "pulled.json")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_would_be_taken_for_another_stations_is_not_fetched()
    {
        using var server = new LocalServer(Ok(Csv));
        var other = Source(server.Address) with { Id = "barn" };
        var site = Site with { Weather = Site.Weather with { Stations = [.. Site.Weather.Stations, other] } };
        var result = await new SourcePull(_folder, other, _memory, Tools(Quick, TimeProvider.System)).RunAsync(site, anyway: false, CancellationToken.None);
        Assert.Contains("also fits the files of yard", Assert.Single(result).What, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_inbox_that_is_gone_is_not_made_anew()
    {
        using var server = new LocalServer(Ok(Csv));
        Directory.Delete(_folder.Inbox, recursive: true);
        Assert.Equal("the inbox is gone", (await RunAsync(Of(server.Address))).What);
        Assert.False(Directory.Exists(_folder.Inbox));
    }

    private static Site Site { get; } = DescriptionFilesOf();

    private static Site DescriptionFilesOf()
    {
        using var home = new TestHome();
        return DescriptionFiles.Of(ExampleSite.PutInto(home)).Reading.Site!;
    }

    private static WeatherSource Source(string url, string file = "yard-pulled.csv", int daysBack = 0, double timeoutSeconds = 10) => Site.Weather.Stations[0] with
    {
        Pull = new Pull { Url = url, File = file, Every = TimeSpan.FromMinutes(10), DaysBack = daysBack, Timeout = TimeSpan.FromSeconds(timeoutSeconds) },
    };

    private static PullTools Tools(PullLimits limits, TimeProvider time) => new() { Time = time, Log = NullLogger.Instance, Limits = limits };

    private SourcePull Of(string url, string file = "yard-pulled.csv", int daysBack = 0, double timeoutSeconds = 10, PullLimits? limits = null, TimeProvider? time = null) =>
        new(_folder, Source(url, file, daysBack, timeoutSeconds), _memory, Tools(limits ?? Quick, time ?? TimeProvider.System));

    private static async Task<PullResult> RunAsync(SourcePull pull, bool anyway = false)
    {
        using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        return Assert.Single(await pull.RunAsync(Site, anyway, limit.Token));
    }

    private void TakeInbox()
    {
        var result = InProcess.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Empty(Directory.GetFiles(_folder.Inbox));
    }

    private sealed class ListLog : ILogger
    {
        private readonly List<string> _lines = [];

        public IReadOnlyList<string> Lines => _lines;

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            _lines.Add($"{logLevel} {formatter(state, exception)}");
    }
}
