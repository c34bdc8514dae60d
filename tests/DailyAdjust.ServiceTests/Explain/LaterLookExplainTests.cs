using System.Text.Json;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Explain;

/// <summary>`explain` through the built program of an advice that was issued at 16:00, with the day's weather until 15:00.</summary>
public sealed class LaterLookExplainTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Every_program_can_be_followed_from_what_was_measured_and_what_is_still_expected_to_its_line()
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("at: \"05:00\"", "at: [\"05:00\", \"16:00\"]", StringComparison.Ordinal));
        var file = Path.Combine(_home.Path, "yard-1.csv");
        File.WriteAllText(file, ExampleSite.WeatherUntil("2026-06-10 15:00"));
        var four = new FakeTimeProvider(new(2026, 6, 10, 21, 0, 0, TimeSpan.Zero)); // in Chicago 16:00
        foreach (var arguments in new string[][] { ["ingest", file], ["morning"] })
        {
            var done = InProcess.Run(four, [.. arguments, "--home", _home.Path]);
            Assert.True(done.ExitCode == 0, done.ToString());
        }

        var folder = site.ReportFolder(new DateOnly(2026, 6, 10));
        using var sheet = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "advice.json")));
        var look = sheet.RootElement.GetProperty("secondLook");
        var (measured, ahead) = (look.GetProperty("etoMm").GetDouble(), look.GetProperty("etoRestMm").GetDouble());
        Assert.True(measured > 1 && ahead > 0.5, $"{measured} and {ahead} mm");
        var advice = CsvRows.Of(File.ReadAllText(Path.Combine(folder, "advice.csv")));
        var shares = 0;
        foreach (var row in advice.Rows)
        {
            var result = RunningProgram.Run("explain", $"{advice.Text(row, "controller")}/{advice.Text(row, "program")}", "--date", "2026-06-10", "--all", "--home", _home.Path);
            Assert.True(result.ExitCode == 0, result.ToString());
            var explained = Explained.Of(result.Output);
            Assert.Contains("advice: " + advice.Text(row, "advice"), result.Output, StringComparison.Ordinal);
            if (advice.Number(row, "exact_percent") is not { } exact)
            {
                continue;
            }

            Assert.True(explained.Lines > 20, $"{explained.Lines} equations");
            Assert.Equal(exact, explained.Last("exact"), 0.00011);
            Assert.Contains("measured from 00:00 to 15:00   hours of station yard", result.Output, StringComparison.Ordinal);
            Assert.Contains("still expected of the rest of the day", result.Output, StringComparison.Ordinal);
            Assert.Equal(measured, explained.Last("measured"), 2e-6);
            Assert.Equal(ahead, explained.Last("ahead"), 2e-6);
            Assert.Equal(ahead, explained.Last("whole") * (1 - explained.Last("then")), 1e-5);
            shares += result.Output.Split("with what was measured of it").Length - 1;
        }

        Assert.True(shares > 0);
    }
}
