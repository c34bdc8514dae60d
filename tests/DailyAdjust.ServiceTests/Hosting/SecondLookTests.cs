using System.Text.Json;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>Several report times on a clock that the test turns: 05:00 and 16:00, the round by 13:00, on 10 June 2026 in Chicago.</summary>
public sealed class SecondLookTests : IDisposable
{
    private static readonly DateTimeOffset Midnight = new(2026, 6, 10, 5, 0, 0, TimeSpan.Zero);
    private static readonly DateOnly Date = new(2026, 6, 10);

    private readonly TestHome _home = new();
    private readonly FakeTimeProvider _time = new(Midnight);
    private readonly ServiceOptions _options = new() { PollSeconds = 30 };

    public void Dispose() => _home.Dispose();

    [Fact]
    public async Task Each_report_time_makes_its_sheet_and_the_later_one_knows_the_weather_up_to_its_hour()
    {
        var site = Site();
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        await Look(runner, 4, 51);
        var first = Sheet(site);
        Assert.Equal((1, "2026-06-10T10:00:00Z"), Issue(first));
        Assert.False(first.TryGetProperty("secondLook", out _));

        await Look(runner, 14, 0);
        Assert.Equal(1, Issue(Sheet(site)).Number);

        Drop(site, "yard-2.csv", ExampleSite.WeatherUntil("2026-06-10 15:00"));
        await Look(runner, 15, 51);
        var second = Sheet(site);
        Assert.Equal((2, "2026-06-10T21:00:00Z"), Issue(second));
        var look = second.GetProperty("secondLook");
        Assert.True(look.GetProperty("afterRound").GetBoolean());
        Assert.Equal(("2026-06-10T16:01", "2026-06-10T15:00", "yard"), (Text(look, "startsFrom"), Text(look, "etoThrough"), Text(look, "etoStation")));

        // Measured by 15:00 and the expected of the rest; what the whole day was expected to have stands on the first sheet.
        var (measured, rest, expected) = (look.GetProperty("etoMm").GetDouble(), look.GetProperty("etoRestMm").GetDouble(), first.GetProperty("freshness").GetProperty("expectedEtoMm").GetDouble());
        Assert.InRange(rest / expected, 0.25, 0.45); // of a June day in Chicago's zone at 98° west a third is left at 15:00
        Assert.Equal(measured + rest, second.GetProperty("freshness").GetProperty("expectedEtoMm").GetDouble(), 5);
        Assert.All(second.GetProperty("programs").EnumerateArray().Where(p => Text(p, "nextStart") is not null), p => Assert.True(string.CompareOrdinal(Text(p, "nextStart"), "2026-06-10T16:01") >= 0));
        var report = string.Join(' ', File.ReadAllText(Path.Combine(site.ReportFolder(Date), "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("A later look: Made with what was known at 16:00", report, StringComparison.Ordinal);
        Assert.Contains("A later look", File.ReadAllText(Path.Combine(site.ReportFolder(Date), "report.html")), StringComparison.Ordinal);

        await Look(runner, 18, 0);
        Assert.Equal(2, Issue(Sheet(site)).Number);
    }

    [Fact]
    public async Task The_whole_days_measured_hours_come_to_the_days_reference_ET()
    {
        var site = Site("\"23:59\"");
        using var runner = new SiteRunner(site, _options, _time, NullLogger.Instance);
        Drop(site, "yard-2.csv", ExampleSite.WeatherUntil("2026-06-11 09:00"));
        await Look(runner, 23, 55);
        var look = Sheet(site).GetProperty("secondLook");
        Assert.Equal("2026-06-10T23:00", Text(look, "etoThrough"));
        Assert.Equal(0, look.GetProperty("etoRestMm").GetDouble());
        var day = RunningProgram.Run("weather", "--home", _home.Path, "--from", "2026-06-10", "--to", "2026-06-10", "--format", "csv");
        var rows = CsvRows.Of(day.Output);
        Assert.InRange(rows.Number(rows.Rows.Single(), "eto_mm")!.Value - look.GetProperty("etoMm").GetDouble(), -0.05, 0.05); // an hour of night
    }

    [Fact]
    public async Task A_machine_that_slept_through_both_makes_only_the_newest()
    {
        var site = Site();
        using (var before = new SiteRunner(site, _options, _time, NullLogger.Instance))
        {
            await Look(before, 4, 51);
        }

        using var after = new SiteRunner(site, _options, _time, NullLogger.Instance);
        await Look(after, 24 + 17, 0);
        Assert.Equal(1, Issue(Sheet(site)).Number);
        Assert.Equal((1, "2026-06-11T22:00:00Z"), Issue(Sheet(site, Date.AddDays(1))));
        Assert.Contains("This sheet was due at 16:00 and was made at 17:00.", File.ReadAllText(Path.Combine(site.ReportFolder(Date.AddDays(1)), "report-full.txt")), StringComparison.Ordinal);
        await Look(after, 24 + 18, 0);
        Assert.Equal(1, Issue(Sheet(site, Date.AddDays(1))).Number);
    }

    /// <summary>The example site with two report times, its weather until five in the morning.</summary>
    private SiteFolder Site(string second = "\"16:00\"")
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("at: \"05:00\"", $"at: [\"05:00\", {second}]", StringComparison.Ordinal));
        Drop(site, "yard-1.csv", ExampleSite.WeatherUntil("2026-06-10 04:00"));
        return site;
    }

    private async Task Look(SiteRunner runner, int hour, int minute)
    {
        _time.SetUtcNow(Midnight.AddHours(hour).AddMinutes(minute));
        await runner.RunAsync(CancellationToken.None);
    }

    private static void Drop(SiteFolder site, string name, string text)
    {
        var path = Path.Combine(site.Inbox, name);
        File.WriteAllText(path, text);
        File.SetLastWriteTimeUtc(path, Midnight.UtcDateTime.AddHours(-1));
    }

    private static JsonElement Sheet(SiteFolder site, DateOnly? date = null) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(site.ReportFolder(date ?? Date), "advice.json"))).RootElement;

    private static (int Number, string AsOf) Issue(JsonElement sheet) => (sheet.GetProperty("issue").GetInt32(), Text(sheet, "asOf")!);

    private static string? Text(JsonElement element, string key) => element.GetProperty(key).GetString();
}
