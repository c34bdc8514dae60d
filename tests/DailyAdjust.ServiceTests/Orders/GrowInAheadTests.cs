using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Orders;

/// <summary>A grow-in that is ordered before it begins, through the real program.</summary>
public class GrowInAheadTests
{
    [Fact]
    public void Tonights_start_that_it_takes_is_nobodys_to_decide_about()
    {
        using var home = new FallbackHome();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-10 05:00"));
        home.Run("ingest", Path.Combine(home.Site.Inbox, "yard-2026.csv"));
        string At(string utc, params string[] arguments) => RunAt(home, utc, arguments);

        (string Advice, double? Exact) P1()
        {
            var rows = CsvRows.Of(At("2026-06-10T10:00:00Z", "advice", "--date", "2026-06-10", "--format", "csv"));
            var row = rows.Rows.Single(r => rows.Text(r, "controller") is "C1" && rows.Text(r, "program") is "P1");
            return (rows.Text(row, "advice"), rows.Number(row, "exact_percent"));
        }

        Assert.True(P1().Exact > 0, P1().ToString());

        // Six starts a day from 15:00 of the 10th on, in the place of the one at night.
        At("2026-06-09T15:00:00Z", "log", "grow-in", "C1/P1", "6 x 4 min", "--date", "2026-06-10", "--time", "15:00", "--until", "2026-06-20", "--note", "sod");
        Assert.Equal(("leave", null), P1());
        Assert.Contains(", grow-in: leave? yes", At("2026-06-10T10:00:00Z", "explain", "C1/P1", "--date", "2026-06-10"), StringComparison.Ordinal);

        // The sheet says what happens, and who keys it in; of a program that was off, that it is to be turned on for it.
        var (text, html) = Morning(home, "2026-06-10T10:00:00Z", "2026-06-10");
        const string Reason = "A grow-in begins at 15:00 today: its starts and minutes are keyed by hand";
        const string KeyIn = "day 1 of 11: key in 6 starts (07:00 09:00 11:00 13:00 15:00 17:00) x 4 min, every day, from 15:00 today on.";
        foreach (var sheet in (string[])[text, html])
        {
            Assert.Contains(KeyIn, sheet, StringComparison.Ordinal);
        }

        Assert.Contains("(C1/P1): leave 100 %. " + Reason + ", the percentage stays.", html, StringComparison.Ordinal); // what is left alone is told on the page only

        At("2026-06-10T10:10:00Z", "log", "off", "C1/P1", "--date", "2026-06-09", "--time", "16:00");
        var (off, offHtml) = Morning(home, "2026-06-10T10:20:00Z", "2026-06-10");
        foreach (var sheet in (string[])[off, offHtml])
        {
            Assert.Contains("TURN ON", sheet, StringComparison.Ordinal);
            Assert.Contains(Reason + ".", sheet, StringComparison.Ordinal);
            Assert.Contains(KeyIn, sheet, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_skip_pauses_the_box_until_it_begins_and_then_the_turf_gets_its_water()
    {
        using var home = new FallbackHome().With(("    place: left of the third tee\n", "    place: left of the third tee\n    pause: 5 d\n"));
        home.Drop("logbook.csv", "time,kind,where,value,unit,until,by,note\n2026-06-05 10:45,setting,C1/P1,90,%,,,\n");
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-12 05:00"));
        RunAt(home, "2026-06-11T15:00:00Z", "log", "grow-in", "C1/P1", "6 x 4 min", "--date", "2026-06-13", "--time", "15:00", "--until", "2026-06-20", "--note", "sod");
        var (text, html) = Morning(home, "2026-06-12T10:00:00Z", "2026-06-12");
        foreach (var sheet in (string[])[text, html])
        {
            Assert.Contains("pause 1 day", sheet, StringComparison.Ordinal);
            Assert.Contains("The box runs by itself again from Sat 13 June for the grow-in that begins at 15:00 tomorrow.", sheet, StringComparison.Ordinal);
        }

        RunAt(home, "2026-06-12T16:00:00Z", "log", "round", "2026-06-12", "done", "--date", "2026-06-12", "--time", "08:00");
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-14 05:00"));
        Morning(home, "2026-06-14T10:00:00Z", "2026-06-14");
        var advice = CsvRows.Of(RunAt(home, "2026-06-14T10:00:00Z", "advice", "--date", "2026-06-14", "--format", "csv"));
        Assert.Equal("leave", advice.Text(advice.Rows.Single(r => advice.Text(r, "controller") is "C1" && advice.Text(r, "program") is "P1"), "advice"));
        var days = CsvRows.Of(RunAt(home, "2026-06-14T10:00:00Z", "balance", "--from", "2026-06-13", "--to", "2026-06-13", "--format", "csv"));
        Assert.True(days.Number(days.Rows.Single(r => days.Text(r, "controller") is "C1" && days.Text(r, "station") is "1"), "irrigation_mm") > 0);
    }

    [Fact]
    public void One_that_begins_before_the_next_visit_is_in_the_nights_though_its_program_is_skipped_today()
    {
        using var home = new FallbackHome().With(("days: [wed, fri, sun], visit: daily", "days: [wed, fri, sun], visit: [fri, sun]"));
        home.Drop("logbook.csv", "time,kind,where,value,unit,until,by,note\n2026-06-05 10:45,setting,C1/P1,50,%,,,\n");
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-12 05:00"));
        RunAt(home, "2026-06-11T15:00:00Z", "log", "grow-in", "C1/P1", "6 x 4 min", "--date", "2026-06-13", "--time", "15:00", "--until", "2026-06-20", "--note", "sod");
        Morning(home, "2026-06-12T10:00:00Z", "2026-06-12");
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(home.Site.Path, "reports", "2026-06-12", "advice.json")));
        JsonElement OfP1(JsonElement list) => list.EnumerateArray().First(e => e.GetProperty("controller").GetString() is "C1" && e.GetProperty("program").GetString() is "P1");
        Assert.Equal("skip", OfP1(json.RootElement.GetProperty("programs")).GetProperty("advice").GetString());

        // 4 min on each of its stations, at the 50 % that it ran at.
        var first = OfP1(json.RootElement.GetProperty("fit").GetProperty("runs"));
        var stations = File.ReadLines(home.Site.StationsFile).Skip(1).Count(l => l.StartsWith("C1,", StringComparison.Ordinal) && l.Contains("fairway", StringComparison.OrdinalIgnoreCase));
        Assert.Equal("2026-06-13T15:00", first.GetProperty("begins").GetString());
        Assert.Equal(2 * stations, (first.GetProperty("finishes").GetDateTime() - first.GetProperty("begins").GetDateTime()).TotalMinutes);
    }

    private static string RunAt(FallbackHome home, string utc, params string[] arguments)
    {
        var result = InProcess.Run(new FixedTime(DateTimeOffset.Parse(utc, CultureInfo.InvariantCulture)), [.. arguments, "--home", Path.GetDirectoryName(Path.GetDirectoryName(home.Site.Path))!]);
        return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
    }

    /// <summary>The sheet of a date, printed and as a page without its marks.</summary>
    private static (string Text, string Html) Morning(FallbackHome home, string utc, string date)
    {
        RunAt(home, utc, "morning", "--date", date);
        string Read(string file) => File.ReadAllText(Path.Combine(home.Site.Path, "reports", date, file));
        string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return (Plain(Read("report-full.txt")), Plain(WebUtility.HtmlDecode(Regex.Replace(Read("report.html"), "<[^>]+>", "", RegexOptions.None, TimeSpan.FromSeconds(5)))));
    }

    private sealed class FixedTime(DateTimeOffset now) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => now;
    }
}
