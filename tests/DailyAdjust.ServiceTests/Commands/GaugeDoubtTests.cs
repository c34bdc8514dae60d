using System.Globalization;
using System.Text.Json;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>The station's gauge beside one that is read by hand, through the real program: sprinklers in reach, blocked, half blocked.</summary>
public sealed class GaugeDoubtTests : IDisposable
{
    private const string Date = "2026-06-17";
    private static readonly DateOnly First = new(2026, 6, 1);
    private static readonly int[] DaysOfRain = [2, 5, 8, 11, 14, 16];

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public GaugeDoubtTests()
    {
        _site = ExampleSite.PutInto(_home);
        File.WriteAllText(_site.SiteFile, File.ReadAllText(_site.SiteFile).Replace(
            "    - { id: yard, station: yard }",
            "    - { id: yard, station: yard }\n    - { id: barn, by_hand: true }",
            StringComparison.Ordinal));
    }

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData(3, 0.00, true)]
    [InlineData(2, 0.00, false)] // two days may be chance
    [InlineData(5, 0.05, false)] // it rained at the barn too
    public void A_gauge_in_reach_of_sprinklers_is_told(int days, double barn, bool told)
    {
        // A program of greens starts at 04:40 and ends before 06:00: both hours have what it threw into the funnel.
        var wet = Enumerable.Range(10, days).ToHashSet();
        var sheet = Sheet(
            (day, hour) => wet.Contains(day) && hour is 5 or 6 ? 0.03 : 0,
            day => wet.Contains(day) ? barn : 0);
        if (told)
        {
            sheet.Tells($"Gauge yard: on {days} of the last 14 days it shows rain only while a program near it ran ({days * 0.06:0.00} in in all) and the other gauges stayed dry: sprinklers may reach it.");
        }
        else
        {
            sheet.TellsNothingOf("Gauge yard");
        }

        sheet.TellsNothingOf("Gauge barn");
    }

    [Fact]
    public void Rain_that_falls_while_nothing_runs_is_not_taken_for_sprinklers()
    {
        // A shower in the afternoon that passed the barn by, on five days.
        var sheet = Sheet((day, hour) => day is >= 10 and < 15 && hour == 16 ? 0.06 : 0, _ => 0);
        sheet.TellsNothingOf("Gauge yard");
    }

    [Theory]
    [InlineData(0.00, "0.00 in", "its funnel may be blocked.")] // clogged
    [InlineData(0.08, "0.48 in", "its funnel may be blocked.")]
    [InlineData(0.20, "1.20 in", "its funnel may be half blocked.")]
    [InlineData(0.30, "", "")]
    [InlineData(0.38, "", "")]
    public void A_gauge_that_shows_nothing_or_half_of_what_the_other_does_is_told(double yard, string shown, string doubt)
    {
        var sheet = Sheet((day, hour) => DaysOfRain.Contains(day) && hour == 2 ? yard : 0, day => DaysOfRain.Contains(day) ? 0.40 : 0);
        if (doubt.Length > 0)
        {
            sheet.Tells($"Gauge yard: {shown} on 6 days of rain of the last 30, the other gauges 2.40 in: {doubt}");
        }
        else
        {
            sheet.TellsNothingOf("Gauge yard");
        }

        sheet.TellsNothingOf("Gauge barn");
    }

    /// <summary>The sheet of the last day, with the rain of the example's weather put aside.</summary>
    /// <param name="yard">Inches of the hour that ends at an hour of a day of June.</param>
    /// <param name="barn">Inches of a day of June.</param>
    private Told Sheet(Func<int, int, double> yard, Func<int, double> barn)
    {
        var lines = ExampleSite.WeatherUntil(Date + " 05:00").Split('\n', StringSplitOptions.RemoveEmptyEntries);
        for (var i = 1; i < lines.Length; i++)
        {
            var end = DateTime.ParseExact(lines[i][..16], "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
            lines[i] = lines[i][..(lines[i].LastIndexOf(',') + 1)] + yard(end.Day, end.Hour).ToString("0.00", CultureInfo.InvariantCulture);
        }

        File.WriteAllLines(Path.Combine(_site.Inbox, "yard-1.csv"), lines);
        File.WriteAllLines(
            Path.Combine(_site.Inbox, "logbook.csv"),
            ["time,kind,where,value,unit,until,by,note", .. Enumerable.Range(1, 16).Select(day => string.Create(CultureInfo.InvariantCulture, $"{First.AddDays(day - 1):yyyy-MM-dd},rain,gauge:barn,{barn(day):0.00},in,,,"))]);
        var result = RunningProgram.Run("morning", "--home", _home.Path, "--date", Date);
        Assert.True(result.ExitCode == 0, result.ToString());

        using var json = JsonDocument.Parse(Report("advice.json"));
        return new Told(
            [.. json.RootElement.GetProperty("freshness").GetProperty("assumed").EnumerateArray().Select(s => s.GetString()!)],
            [Joined(Report("report-full.txt")), Joined(System.Net.WebUtility.HtmlDecode(Report("report.html")))]);
    }

    private static string Joined(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private string Report(string name) => File.ReadAllText(Path.Combine(_site.Path, "reports", Date, name));

    /// <summary>What every form of the sheet says.</summary>
    private sealed record Told(IReadOnlyList<string> Data, IReadOnlyList<string> Pages)
    {
        public void Tells(string words)
        {
            Assert.Contains(Data, d => d.StartsWith(words, StringComparison.Ordinal));
            Assert.All(Pages, page => Assert.Contains(words, page, StringComparison.Ordinal));
        }

        public void TellsNothingOf(string gauge)
        {
            Assert.DoesNotContain(Data, d => d.StartsWith(gauge, StringComparison.Ordinal));
            Assert.All(Pages, page => Assert.DoesNotContain(gauge + ":", page, StringComparison.Ordinal));
        }
    }
}
