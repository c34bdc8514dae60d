using System.Globalization;
using System.Text.Json;
using DailyAdjust.ServiceTests.Fallback;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>
/// `log rain` on the morning of 12 June 2026 of the example site, whose station measured 0.03 in from midnight to 05:00 (and 1.35 in from 05:00 of the day before to 04:00): what it is
/// booked to is said at once and on the sheet.
/// </summary>
public sealed class HandRainTests : IDisposable
{
    private const string Date = "2026-06-12";

    private readonly FallbackHome _home = new();

    public HandRainTests()
    {
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        _home.Run("ingest", Path.Combine(_home.Site.Inbox, "yard-2026.csv"));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_reading_of_now_says_to_which_span_it_is_booked_and_that_it_goes_before_the_instrument()
    {
        Assert.Contains(
            "Gauge yard, read by hand: 0.80 in from 04:55 yesterday (24 hours back) to 04:55 today, booked as rain of yesterday, when that time begins. "
            + "It counts in place of station yard, which has 1.35 in for that time: what a person read goes before the instrument.",
            At("04:55", "log", "rain", "yard", "0.8", "in"), StringComparison.Ordinal);

        var sheet = Morning();
        Assert.Contains("Gauge yard, read by hand: 0.80 in from 04:55 yesterday (24 hours back) to 04:55 today, booked as rain of yesterday", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("yesterday (partly by hand), ", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("read by hand: 0.80\u00A0in from 04:55 yesterday", Read("report.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Since_the_gauges_last_entry_it_is_rain_since_midnight()
    {
        At("00:10", "log", "rain", "yard", "0", "in");
        Assert.Contains("0.25 in from 00:10 today (its last entry) to 04:55 today, booked as rain of today", At("04:55", "log", "rain", "yard", "0.25", "in"), StringComparison.Ordinal);
        Assert.Contains("since midnight (partly by hand)", Morning().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_total_of_today_given_before_the_sheet_is_rain_since_midnight_and_counts_once()
    {
        Assert.Contains("0.03 in since midnight.", Morning().Text, StringComparison.Ordinal);

        var said = At("04:58", "log", "rain", "yard", "0.4", "in", "--date", Date);
        // Of the 0.03 in, 0.02 in are in the hour to 05:00, which is not over.
        Assert.Equal(
            "Gauge yard, read by hand: 0.40 in is the total of today. It counts in place of station yard, which has 0.01 in for that time: what a person read goes before the instrument. "
            + "That date is not over: log its total again if more falls.",
            Line(said));
        var sheet = Morning();
        Assert.Contains("0.40 in since midnight (by hand).", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Gauge yard, read by hand: 0.40 in is the total of today.", sheet.Text, StringComparison.Ordinal);

        // The finished day has the same rain, once.
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-13 05:00"));
        _home.Run("ingest", Path.Combine(_home.Site.Inbox, "yard-2026.csv"));
        Assert.Equal(0.4 * 25.4, _home.Day(Date).RainMm!.Value, 6);
    }

    [Fact]
    public void Rain_of_today_that_was_set_aside_is_told_at_once_and_asked_for_and_a_reading_by_hand_settles_it()
    {
        // An inch under dry air in the hour to 03:00, as if somebody had cleaned the bucket: what really fell is not known.
        Assert.DoesNotContain("set aside", Morning().Text, StringComparison.Ordinal);
        _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00")
            .Replace("2026-06-12 03:00,60.9,97,2.0,0,0.00", "2026-06-12 03:00,60.9,40,2.0,0,1.00", StringComparison.Ordinal)
            .Replace("2026-06-12 04:00,59.9,95,1.8,0,0.00", "2026-06-12 04:00,59.9,40,1.8,0,0.00", StringComparison.Ordinal));
        _home.Run("ingest", Path.Combine(_home.Site.Inbox, "yard-2026.csv"));
        var sheet = Morning();
        Assert.Contains("1 value of rain set aside by the check for rain that was none on Fri 12 June (1.00 in, the air stayed dry: a cleaned bucket, or a sprinkler?).", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("since midnight (a reading was set aside)", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Rain not known: gauge yard, Fri 12 June", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Everything measured", sheet.Text, StringComparison.Ordinal);

        At("04:58", "log", "rain", "yard", "0.1", "in", "--date", Date);
        var answered = Morning();
        Assert.DoesNotContain("Rain not known: gauge yard, Fri 12 June", answered.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("(a reading was set aside)", answered.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_total_is_answered_as_the_sheet_of_that_minute_says_it() =>
        AnsweredAsOnTheSheet("is the total of today", "rain", "yard", "0.4", "in", "--date", Date);

    [Fact]
    public void A_reading_over_midnight_beside_the_total_of_today_is_said_to_count_twice()
    {
        At("04:58", "log", "rain", "yard", "0.4", "in", "--date", Date);
        AnsweredAsOnTheSheet(
            "Its hours after midnight are in the total of today too: if it rained in them that counts twice, so take one of the two back (`log void`).", "rain", "yard", "1.2", "in");
    }

    [Fact]
    public void A_reading_of_a_date_that_has_its_total_is_said_not_to_count()
    {
        At("00:10", "log", "rain", "yard", "0", "in");
        At("04:58", "log", "rain", "yard", "0.4", "in", "--date", Date);
        AnsweredAsOnTheSheet("0.25 in from 00:10 today (its last entry) to 05:00 today, booked as rain of today, when that time begins. It is not counted: that date's total by hand counts instead.", "rain", "yard", "0.25", "in");

        // Of a date that is over, too.
        At("05:00", "log", "rain", "yard", "0.4", "in", "--date", "2026-06-11");
        var said = At("05:00", "log", "rain", "yard", "0.3", "in", "--date", "2026-06-11", "--time", "06:00");
        Assert.Contains("booked as rain of Wed 10 June", Line(said), StringComparison.Ordinal);
        said = At("05:00", "log", "rain", "yard", "0.2", "in", "--date", "2026-06-11", "--time", "18:00");
        Assert.EndsWith("It is not counted: that date's total by hand counts instead.", Line(said), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_in_the_ground_too()
    {
        List<double> Exact() => [.. _home.Morning("2026-06-10").Json.GetProperty("programs").EnumerateArray()
            .Select(p => p.GetProperty("exactPercent")).Where(e => e.ValueKind == JsonValueKind.Number).Select(e => e.GetDouble())];
        var before = Exact();
        On("2026-06-10", "04:58", "log", "rain", "yard", "0.2", "in", "--date", "2026-06-10");
        var after = Exact();
        Assert.All(before.Zip(after), pair => Assert.True(pair.Second <= pair.First, $"{pair}"));
        Assert.Contains(before.Zip(after), pair => pair.Second < pair.First);
    }

    [Fact]
    public void A_total_that_came_in_after_a_sheets_instant_is_not_known_to_it()
    {
        At("18:00", "log", "rain", "yard", "0.4", "in", "--date", Date);
        var sheet = _home.Morning(Date);
        Assert.Contains("0.03 in since midnight.", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("read by hand", sheet.Text, StringComparison.Ordinal);
    }

    /// <summary>Logged at 05:00, the answer has the words, and the sheet of 05:00 has the answer.</summary>
    private void AnsweredAsOnTheSheet(string words, params string[] log)
    {
        var line = Line(At("05:00", "log", log));
        Assert.Contains(words, line, StringComparison.Ordinal);
        Assert.Contains(line, Morning().Text, StringComparison.Ordinal);
    }

    /// <summary>What the answer to `log rain` says of the gauge.</summary>
    private static string Line(string said) => said.Split('\n').Single(l => l.StartsWith("Gauge ", StringComparison.Ordinal)).TrimEnd();

    private FallbackSheet Morning()
    {
        At("05:00", "morning");
        return new(Read("report-full.txt"), Read("advice.json"));
    }

    private string Read(string file) => File.ReadAllText(Path.Combine(_home.Site.Path, "reports", Date, file));

    private string At(string time, string command, params string[] arguments) => On(Date, time, command, arguments);

    /// <summary>The real program with its clock at a time in Chicago, five hours behind.</summary>
    private string On(string date, string time, string command, params string[] arguments)
    {
        var now = DateTimeOffset.Parse($"{date}T{time}-05:00", CultureInfo.InvariantCulture).ToUniversalTime();
        var result = InProcess.Run(new FakeTimeProvider(now), [command, "--home", Path.GetDirectoryName(Path.GetDirectoryName(_home.Site.Path))!, .. arguments]);
        return result.ExitCode == 0 ? result.Output : throw new InvalidOperationException(result.ToString());
    }
}
