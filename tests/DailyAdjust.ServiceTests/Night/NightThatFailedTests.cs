using System.Globalization;
using System.Text.Json;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Sites;
using DailyAdjust.ServiceTests.Fallback;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace DailyAdjust.ServiceTests.Night;

/// <summary>A night that failed, through the real program.</summary>
public sealed class NightThatFailedTests
{
    private const string Date = "2026-06-10";

    /// <summary>
    /// The pump is out 01:10-03:40. K1 has 24 min a green from 01:00: green 1 ran 10 min. K2 begins 02:00. K3 keeps standard time: tees 02:20-03:00,
    /// then the rough, which waits for them, 03:00-03:20.
    /// </summary>
    [Fact]
    public void The_next_issue_says_what_to_run_by_hand_and_the_list_shrinks_until_it_is_empty()
    {
        using var home = NightHome.Create();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        var first = home.Morning(Date);
        Assert.Equal(1, first.Json.GetProperty("issue").GetInt32());
        Assert.False(first.Json.TryGetProperty("runByHand", out _));
        Assert.DoesNotContain("RUN BY HAND", first.Text, StringComparison.Ordinal);

        home.Run("log", "ran", "pump", "no", "--date", Date, "--time", "01:10", "--until", "03:40");
        var failed = home.Morning(Date);
        Assert.Equal((2, 1), (failed.Json.GetProperty("issue").GetInt32(), failed.Json.GetProperty("replacesIssue").GetInt32()));
        var list = failed.Json.GetProperty("runByHand");
        Assert.Equal("2026-06-10T06:30", list.GetProperty("firstPlay").GetString());

        // 90 + 100 of 200 gpm run together; K3's 60 gpm would be too much beside them, and only one of its tees is done before play.
        Assert.Equal([["K1", "K2"], ["K3"]], list.GetProperty("groups").EnumerateArray().Select(g => g.GetProperty("boxes").EnumerateArray().Select(b => b.GetProperty("controller").GetString()!).ToArray()));
        Assert.Equal([("K1/1", 14d), ("K1/2", 24), ("K1/3", 24), ("K2/1", 24), ("K2/2", 24), ("K3/1", 20)], Stations(list).Select(s => (s.Key, s.Missed)));
        Assert.Equal("2", list.GetProperty("notBeforePlay")[0].GetProperty("stations")[0].GetProperty("station").GetString());
        Assert.Equal("3", list.GetProperty("canWait")[0].GetProperty("station").GetString());
        Assert.All(Stations(list), s => Assert.InRange(s.Minutes, 3, s.Missed));
        Assert.Contains("K1 and K2 together, 190 gpm of the pump's 200 gpm", failed.Text, StringComparison.Ordinal);
        Assert.Contains("Not done before play, or before a rule or an order is against it: K3 (ninth green): tee 2 (K3/2) 20 min.", failed.Text, StringComparison.Ordinal);
        Assert.Contains("K1/2: hose on", failed.Text, StringComparison.Ordinal);
        Assert.Contains(". It is to be run by hand first; then look again.", failed.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(" is to be run by hand first", failed.Text.Replace("It is to be", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains("Lock out the electricity before you open a pump or a box", failed.Text, StringComparison.Ordinal);

        // Half of K2's first green, then everything that the sheet asked for.
        home.Run("log", "run", "K2/1", "10", "min", "--date", Date, "--time", "04:00");
        var half = home.Morning(Date);
        var left = Stations(half.Json.GetProperty("runByHand")).Single(s => s.Key is "K2/1");
        Assert.Equal(Stations(list).Single(s => s.Key is "K2/1").Minutes - 10, left.Minutes, 1.0);
        foreach (var station in Stations(half.Json.GetProperty("runByHand")).Append(new("K3/2", 20, 20)))
        {
            home.Run("log", "run", station.Key, station.Minutes.ToString(CultureInfo.InvariantCulture), "min", "--date", Date, "--time", "04:30");
        }

        var done = home.Morning(Date);
        var rest = done.Json.GetProperty("runByHand");
        Assert.Equal(0, rest.GetProperty("groups").GetArrayLength() + rest.GetProperty("notBeforePlay").GetArrayLength() + rest.GetProperty("beyondPump").GetArrayLength());
        Assert.Equal(["3"], rest.GetProperty("canWait").EnumerateArray().Select(s => s.GetProperty("station").GetString()));
        Assert.Contains("There is nothing to start by hand now.", done.Text, StringComparison.Ordinal);

        // The balance of that date holds exactly the 10 minutes of the night, and what was run by hand.
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-11 05:00"));
        home.Morning("2026-06-11");
        var rows = CsvRows.Of(home.Run("balance", "--from", Date, "--to", Date, "--format", "csv"));
        var green = rows.Rows.Single(r => rows.Text(r, "controller") is "K1" && rows.Text(r, "station") is "1");
        var byHand = Stations(half.Json.GetProperty("runByHand")).Single(s => s.Key is "K1/1").Minutes;
        Assert.Equal((10 + byHand) / 60 * 0.55 * 25.4 * 0.8, rows.Number(green, "irrigation_mm")!.Value, 1e-4);
    }

    [Fact]
    public void A_reduced_pump_carries_one_box_at_a_time()
    {
        using var home = NightHome.Create();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        home.Run("log", "ran", "pump", "no", "--date", Date, "--time", "01:10", "--until", "03:40");
        home.Run("log", "pump", "150", "gpm", "--date", Date, "--time", "03:40", "--until", "12:00");
        var groups = home.Morning(Date).Json.GetProperty("runByHand").GetProperty("groups");
        Assert.All(groups.EnumerateArray(), g => Assert.True(g.GetProperty("flow").GetDouble() <= g.GetProperty("capacity").GetDouble() + 1e-6));
        Assert.All(groups.EnumerateArray(), g => Assert.Equal(150 * 3.785411784, g.GetProperty("capacity").GetDouble(), 1e-3));
        Assert.Equal("K1", groups[0].GetProperty("boxes").EnumerateArray().First().GetProperty("controller").GetString());
        Assert.DoesNotContain(groups[0].GetProperty("boxes").EnumerateArray(), b => b.GetProperty("controller").ValueEquals("K2"));
    }

    [Fact]
    public void After_a_power_loss_every_box_is_verified_one_after_the_other()
    {
        using var home = NightHome.Create();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        home.Run("log", "setting", "K2/P1", "85", "--date", "2026-06-08", "--time", "11:00");
        home.Run("log", "power", "site", "--date", Date, "--time", "01:10", "--until", "03:40", "--note", "storm");
        var sheet = home.Morning(Date);
        Assert.Equal(["K1", "K2", "K3"], Boxes(sheet));
        Assert.Contains("K2 (behind the barn): without power from 01:10 today to 03:40 today (storm). By the logbook it should show P1 85 %.", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("clock and weekday, then minutes, starts and days of every program, then its percentage", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Lock out the electricity", sheet.Text, StringComparison.Ordinal);

        home.Run("log", "checked", "K2", "--date", Date, "--time", "04:10");
        Assert.Equal(["K1", "K3"], Boxes(home.Morning(Date)));
        home.Run("log", "checked", "K1", "--date", Date, "--time", "04:20");
        Assert.Equal(["K3"], Boxes(home.Morning(Date)));
        home.Run("log", "checked", "K3", "--date", Date, "--time", "04:30");
        Assert.Empty(Boxes(home.Morning(Date)));
    }

    [Fact]
    public void Both_changes_of_the_clocks_remind_of_those_that_are_moved_by_hand()
    {
        using var home = NightHome.Create().With(("start: 2026-06-01", "start: 2026-03-01"));
        Assert.DoesNotContain("Clocks", home.Morning("2026-03-06").Text, StringComparison.Ordinal);
        var before = home.Morning("2026-03-07");
        Assert.Contains("Clocks go forward 60 min at 02:00 tomorrow: - Move the clock of K1 (by the well) and K2 (behind the barn) forward by 60 min once they have", before.Text, StringComparison.Ordinal);
        Assert.Equal(["K1", "K2"], before.Json.GetProperty("clockChange").GetProperty("controllers").EnumerateArray().Select(c => c.GetString()));
        Assert.Contains("Clocks went forward 60 min at 02:00 today: - Move the clock of K1 (by the well) and K2 (behind the barn)", home.Morning("2026-03-08").Text, StringComparison.Ordinal);
        home.Run("log", "checked", "K1", "--date", "2026-03-08", "--time", "09:00");
        Assert.Contains("Move the clock of K2 (behind the barn) forward by 60 min; until then it starts 60 min later", home.Morning("2026-03-09").Text, StringComparison.Ordinal);
        home.Run("log", "checked", "K2", "--date", "2026-03-09", "--time", "09:00");
        Assert.DoesNotContain("Clocks", home.Morning("2026-03-10").Text, StringComparison.Ordinal);

        Assert.Contains("Clocks go back 60 min at 02:00 tomorrow", home.Morning("2026-10-31").Text, StringComparison.Ordinal);
        Assert.Contains("Clocks went back 60 min at 02:00 today: - Move the clock of K1 (by the well) and K2 (behind the barn) back by 60 min; until then they start 60 min earlier", home.Morning("2026-11-01").Text, StringComparison.Ordinal);
    }

    /// <summary>What the running service does when something comes in before the round is done.</summary>
    [Fact]
    public void News_of_the_night_alone_makes_another_issue()
    {
        using var home = NightHome.Create();
        home.Drop("yard-2026.csv", ExampleSite.WeatherUntil(Date + " 05:00"));
        home.Morning(Date);
        var asOf = new DateTimeOffset(2026, 6, 10, 10, 0, 0, TimeSpan.Zero);
        IssuedMorning? Again()
        {
            using var site = OpenSite.Open(home.Site, LedgerMode.Write);
            return new SiteMorning(site, NullLogger.Instance).Issue(DateOnly.ParseExact(Date, "yyyy-MM-dd", CultureInfo.InvariantCulture), asOf, [], onlyIfChanged: true);
        }

        Assert.Null(Again());
        home.Run("log", "power", "K1", "--date", Date, "--time", "02:00");
        Assert.Equal(2, Again()!.Issue);
        Assert.Null(Again());
        home.Run("log", "note", "K1", "door was open", "--date", Date, "--time", "04:00");
        Assert.Null(Again());
    }

    private static IReadOnlyList<string> Boxes(FallbackSheet sheet) =>
        sheet.Json.TryGetProperty("boxesToVerify", out var boxes) ? [.. boxes.EnumerateArray().Select(b => b.GetProperty("controller").GetString()!)] : [];

    private static IReadOnlyList<Listed> Stations(JsonElement list) =>
    [
        .. list.GetProperty("groups").EnumerateArray().SelectMany(g => g.GetProperty("boxes").EnumerateArray()).SelectMany(b => b.GetProperty("stations").EnumerateArray())
            .Select(s => new Listed($"{s.GetProperty("controller").GetString()}/{s.GetProperty("station").GetString()}", s.GetProperty("missedMinutes").GetDouble(), s.GetProperty("minutes").GetDouble())),
    ];

    private sealed record Listed(string Key, double Missed, double Minutes);
}
