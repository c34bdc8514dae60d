using System.Text.Json;
using System.Text.RegularExpressions;
using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Explain;

/// <summary>`explain` through the real program: what it prints can be followed with a calculator and ends where the sheet does.</summary>
public sealed class ExplainTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Every_program_of_the_demo_can_be_followed_to_its_line_on_the_sheet()
    {
        Assert.Equal(0, RunningProgram.Run("demo", "--home", _home.Path).ExitCode);
        var site = Assert.Single(_home.Home.Sites());
        var advice = CsvRows.Of(File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 7, 16)), "advice.csv")));
        var kinds = new HashSet<string>(StringComparer.Ordinal);
        foreach (var row in advice.Rows)
        {
            var key = $"{advice.Text(row, "controller")}/{advice.Text(row, "program")}";
            var result = InProcess.Run("explain", key, "--all", "--home", _home.Path);
            Assert.True(result.ExitCode == 0, result.ToString());
            var explained = Explained.Of(result.Output);
            kinds.Add(advice.Text(row, "advice"));
            Assert.Contains("advice: " + advice.Text(row, "advice"), result.Output, StringComparison.Ordinal);
            if (advice.Number(row, "exact_percent") is { } exact)
            {
                Assert.True(explained.Lines > 20, $"{key}: {explained.Lines} equations");
                Assert.Equal(exact, explained.Last("exact"), 0.00011);
            }

            if (advice.Number(row, "percent") is { } percent)
            {
                Assert.Equal(percent, explained.Last("percent"));
            }
        }

        Assert.Superset(new HashSet<string>(["set", "skip", "leave", "resume"], StringComparer.Ordinal), kinds);

        // What the guide shows is what the program prints.
        var guide = File.ReadAllText(Path.Combine(Repository.Root, "docs", "explain.md")).ReplaceLineEndings("\n");
        var excerpts = Regex.Matches(guide, "`dailyadjust (?<command>explain [^`]*)`[^`]*```text\n(?<text>.*?)```", RegexOptions.Singleline);
        Assert.True(excerpts.Count >= 2, guide);
        Assert.All(excerpts, e => Assert.Contains(
            e.Groups["text"].Value, InProcess.Run([.. e.Groups["command"].Value.Split(' '), "--home", _home.Path]).Output.ReplaceLineEndings("\n"), StringComparison.Ordinal));
    }

    [Fact]
    public void A_station_s_day_of_hourly_readings_ends_at_its_balance_in_text_and_as_data()
    {
        using var home = new FallbackHome();
        home.Drop("yard-2026.csv", new HourlyFile().Text);
        home.Run("morning", "--date", "2026-06-12");
        var text = home.Run("explain", "C1/3", "--date", "2026-06-10", "--all");
        var explained = Explained.Of(text);
        var balance = CsvRows.Of(home.Run("balance", "--from", "2026-06-10", "--to", "2026-06-10", "--format", "csv"));
        var day = balance.Rows.Single(r => balance.Text(r, "controller") is "C1" && balance.Text(r, "station") is "3");
        Assert.Equal(balance.Number(day, "depletion_mm")!.Value, explained.Last("Dr"), 0.0001);
        Assert.Equal(balance.Number(day, "eto_mm")!.Value, explained.Last("ETo"), 0.0001);
        Assert.True(explained.Lines > 24 * 8, $"{explained.Lines} equations");
        Assert.Contains("[ASCE05] eq. 1", text, StringComparison.Ordinal);

        using var json = JsonDocument.Parse(home.Run("explain", "C1/3", "--date", "2026-06-10", "--format", "json"));
        var last = json.RootElement.GetProperty("sections").EnumerateArray().Last().GetProperty("steps").EnumerateArray().Last();
        Assert.Equal(explained.Last("Dr"), last.GetProperty("value").GetDouble(), 0.000001);
        Assert.Equal("mm", last.GetProperty("unit").GetString());
    }

    [Fact]
    public void A_day_on_which_inputs_were_estimated_says_which_and_can_be_followed()
    {
        using var home = new FallbackHome();
        home.Drop("yard-2026.csv", new HourlyFile().Empty("2026-06-10", 10, 14, HourlyFile.Wind).Text);
        home.Run("morning", "--date", "2026-06-12");
        var text = home.Run("explain", "C1/3", "--date", "2026-06-10");
        Assert.Contains("estimated: wind_speed: taken as 2 m/s", text, StringComparison.Ordinal);
        Assert.Equal(home.Day("2026-06-10").EtoMm, Explained.Of(text).Last("ETo"), 0.0001);
    }

    [Fact]
    public void An_issued_sheet_is_explained_as_of_itself_though_its_weather_was_corrected_since()
    {
        using var home = new FallbackHome();
        home.Drop("yard-1.csv", new HourlyFile("2026-06-10 05:00").Text);
        home.Run("morning", "--date", "2026-06-10");
        string Program(string format) => home.Run("explain", "C1/P1", "--date", "2026-06-10", "--format", format);
        var (then, data, day) = (Program("text"), Program("json"), home.Run("explain", "C1/1", "--date", "2026-06-09"));
        Assert.Contains("sheet 2026-06-10/1", then, StringComparison.Ordinal);
        Assert.True(Explained.Of(then).Lines > 10, then);

        var corrected = new HourlyFile("2026-06-10 05:00");
        foreach (var hour in Enumerable.Range(9, 8))
        {
            corrected.Set($"2026-06-09 {hour:00}:00", HourlyFile.Temperature, $"{91 + hour}");
        }

        home.Drop("yard-2.csv", corrected.Text);
        home.Run("ingest", Path.Combine(home.Site.Inbox, "yard-2.csv"));
        Assert.NotEqual(day, home.Run("explain", "C1/1", "--date", "2026-06-09"));
        Assert.Equal(then, Program("text"));
        Assert.Equal(data, Program("json"));
    }

    [Fact]
    public void Of_weather_that_is_too_old_it_says_which_rule_decided()
    {
        using var home = new FallbackHome();
        home.Drop("yard-1.csv", new HourlyFile("2026-06-10 05:00").Text);
        home.Run("morning", "--date", "2026-06-15");
        var text = home.Run("explain", "C1/P1");
        Assert.Contains("weather too old or unknown: as set? yes", text, StringComparison.Ordinal);
        Assert.Contains("advice: as-set", text, StringComparison.Ordinal);
    }
}
