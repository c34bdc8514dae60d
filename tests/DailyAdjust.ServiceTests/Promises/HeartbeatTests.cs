using System.Diagnostics.Metrics;
using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Fetching;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The heartbeat beats after a morning, and only when no site has a sheet that is due and not issued.</summary>
[Trait("Promise", "9")]
public sealed class HeartbeatTests : IDisposable
{
    private static readonly DateTimeOffset AfterHour = new(2026, 6, 18, 10, 30, 0, TimeSpan.Zero);

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public HeartbeatTests()
    {
        _site = ExampleSite.TakenIn(_home);
        Directory.CreateDirectory(_site.Inbox);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_waits_for_the_last_site_and_tells_who_asked_for_it()
    {
        using var server = new LocalServer(LocalServer.Status(204));
        var other = Second();
        At(AfterHour, "morning", "--site", ExampleSite.Name, "--set", $"PingUrl={server.Address}beat/one");
        Assert.False(File.Exists(_home.Home.HeartbeatFile));
        Assert.Empty(server.Questions);

        At(AfterHour, "morning", "--site", other.Name, "--set", $"PingUrl={server.Address}beat/one");
        Assert.Equal("2026-06-18T10:30:00Z\nother 2026-06-18/1\ntamarack 2026-06-18/1\n", File.ReadAllText(_home.Home.HeartbeatFile));
        Assert.StartsWith("GET /beat/one HTTP/1.1", Assert.Single(server.Questions), StringComparison.Ordinal);

        // What the address is nobody learns from the logs.
        Assert.DoesNotContain("beat/one", Logs(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_site_that_was_slept_over_or_cannot_be_read_keeps_it_from_beating()
    {
        At(AfterHour, "morning");
        var beat = File.ReadAllText(_home.Home.HeartbeatFile);
        var other = Second();
        File.WriteAllText(other.LedgerFile, new string('x', 8192));
        At(AfterHour.AddDays(1), "morning", "--site", ExampleSite.Name);
        Assert.Equal(beat, File.ReadAllText(_home.Home.HeartbeatFile));
        Directory.Delete(other.Path, recursive: true);
        At(AfterHour.AddDays(1), "morning");
        Assert.StartsWith("2026-06-19T10:30:00Z\n", File.ReadAllText(_home.Home.HeartbeatFile), StringComparison.Ordinal);
    }

    [Fact]
    public void Nobody_who_hears_the_ping_changes_nothing_of_the_morning()
    {
        using var server = new LocalServer(LocalServer.Status(404));
        var result = At(AfterHour, "morning", "--set", $"PingUrl={server.Address}secret-path");
        Assert.Equal(0, result.ExitCode);
        Assert.True(File.Exists(_home.Home.HeartbeatFile));
        Assert.NotEmpty(server.Questions);
        Assert.Contains("could not be told", Logs(), StringComparison.Ordinal);
        Assert.DoesNotContain("secret-path", Logs(), StringComparison.Ordinal);
    }

    [Fact]
    public void An_address_that_is_none_is_refused_with_the_settings()
    {
        var result = At(AfterHour, "morning", "--set", "PingUrl=ftp://example.com/x");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("PingUrl", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Whoever_listens_to_the_meter_gets_the_counts()
    {
        var counts = new Dictionary<string, long>(StringComparer.Ordinal);
        using var listener = new MeterListener { InstrumentPublished = (instrument, l) => { if (string.Equals(instrument.Meter.Name, "DailyAdjust", StringComparison.Ordinal)) { l.EnableMeasurementEvents(instrument); } } };
        listener.SetMeasurementEventCallback<long>((instrument, value, tags, _) =>
        {
            if (tags.ToArray().Any(t => t is { Key: "site", Value: "counted" }))
            {
                counts[instrument.Name] = counts.GetValueOrDefault(instrument.Name) + value;
            }
        });
        listener.Start();
        var site = Second("counted");
        File.WriteAllText(Path.Combine(site.Inbox, "holiday.csv"), "a,b\n1,2\n");
        File.Copy(ExampleSite.Logbook, Path.Combine(site.Inbox, "logbook.csv"));
        At(AfterHour.AddDays(-3), "morning", "--site", "counted");
        At(AfterHour, "morning", "--site", "counted");
        Assert.Equal(2, counts["dailyadjust.sheets"]);
        Assert.Equal(2, counts["dailyadjust.mornings.missed"]);
        Assert.Equal(1, counts["dailyadjust.files.taken"]);
        Assert.Equal(1, counts["dailyadjust.files.refused"]);
    }

    private SiteFolder Second(string name = "other")
    {
        var site = _home.EmptySite(name);
        foreach (var file in new DirectoryInfo(_site.Path).GetFiles().Where(f => f.Extension is ".yaml" or ".csv" or ".db"))
        {
            file.CopyTo(Path.Combine(site.Path, file.Name));
        }

        return site;
    }

    private string Logs() => string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Select(File.ReadAllText));

    private ProgramResult At(DateTimeOffset now, params string[] arguments) =>
        InProcess.Run(new FakeTimeProvider(now), [arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
