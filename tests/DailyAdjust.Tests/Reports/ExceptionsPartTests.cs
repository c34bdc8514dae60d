using System.Text.Json;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What is otherwise than on an ordinary day, in every file of the report.</summary>
public sealed class ExceptionsPartTests
{
    private static readonly string[] Said =
    [
        "Water in by hand: 0.25 in at area:greens, from 07:00 today, by 20:00 today (granular, by R. Vance)",
        "Settle which goes first. Range north (C/P1): hold: drain work. Through today, the last day.",
        "Green 1 (A/1): 26 min, as 3 runs of at most 10 min, 25 min apart (0.16 in is left)",
        "take out the start of 21:00 today. It must not run: event, club final.",
        "take out stations 3 and 4, from 21:00 today on. Hold: drain work. The next sheet asks whether that was done.",
        "put back station 2, if it was taken out. What kept it from running ended at 23:00 yesterday: no water, foliar.",
        "put back the starts of 21:00 and 23:00, if they were taken out. What kept them from running ends with today: event, club final.",
        "start of 21:00 yesterday, stations 3 and 4: the numbers take it that they ran. If they were taken out, a line in logbook.csv for each: 2026-07-14,ran,A/3,no",
        "day 3 of 12: key in 3 starts (07:00 10:00 13:00) x 4 min, every day.",
        "day 1 of 10: key in 2 starts (07:00 13:00) x 5 min, every day, from 07:00 tomorrow on.",
        "\"leak at the 6th\" (Pat)",
        "D: shut from 17:00 yesterday until 17:00 today (0.37 in at gauge shop).",
        "taken not to have run. If it did: dailyadjust log ran D/P1 yes --date 2026-07-15 --site quarry-bend",
        "Cold caution: 35 °F forecast for tonight, below 40 °F. Do not water frozen ground, and watch for ice on paths. Tonight's starts must not run.",
        "Wind caution: 14 mph (above 10 mph) last night; tonight is not forecast. Sprinklers throw unevenly.",
        "The whole site may run 60 % of its base minutes' water.",
        "At most: rough off, greens 100 %.",
        "Lock out the electricity of pump and box before you open either.",
        "When a box is done: dailyadjust log checked E --site quarry-bend",
        "area greens: no water, wetting agent. Ordered by R. Vance. From 06:00 tomorrow. Until 18:00 tomorrow, 1 day left.",
        "Range north (C/P1): grow-in: new sod. Through Fri 24 July, 9 days left.",
        "5 stations did not get the night's water and cannot wait; 3 of them can be run. Begun 05:00, done 06:00, first play 07:00.",
        "05:00 to 06:00: A and B together, 300 gpm of the pump's 500 gpm",
        "at 90 %, 54 min in all",
        "Green 3 (B/3) 8 min",
        "Not done before play, or before a rule or an order is against it: C",
        "More than the pump gives now: Green 2 (C/2) 20 min. Take the hose.",
        "Must not run now (an order, the season or a watering rule): E station 1.",
        "Did not run either, but can wait for the next start: D stations 1 and 2.",
        "When it has run: dailyadjust log run A/P1 90 % --site quarry-bend",
        "Lock out the electricity before you open a pump or a box; local codes and licensed practice come first.",
        "without power from 22:00 yesterday to 03:00 today (lightning). Checked 02:00 today, before its power was back: that does not count. Check it again, or put the times right. By the logbook it should show P1 90 %, P2 off.",
        "At each: clock and weekday, then minutes, starts and days of every program, then its percentage. When one is right: dailyadjust log checked A --site quarry-bend",
        "without power at some time today. By the logbook it should show P1 80 %.",
        "setting 500 % (today, R. Vance) is beyond what the box can do (0-150 %): not used. Read the dial, then: dailyadjust log setting A/P1 ____ --site quarry-bend",
        "Clocks go forward 60 min at 02:00 tomorrow",
        "forward by 60 min once they have; until then they start 60 min later by the site's clock.",
    ];

    [Fact]
    public void Text_and_page_say_the_same()
    {
        var text = Plain(Rendered.File(ReportFiles.FullText, InventedExceptions.Build()));
        var page = Plain(System.Net.WebUtility.HtmlDecode(Rendered.File(ReportFiles.Html, InventedExceptions.Build()).Replace("<code>", "", StringComparison.Ordinal).Replace("</code>", "", StringComparison.Ordinal)));
        Assert.All(Said, s => Assert.Contains(s, text, StringComparison.Ordinal));
        Assert.All(Said, s => Assert.Contains(s, page, StringComparison.Ordinal));
    }

    [Fact]
    public void An_ordinary_morning_has_no_such_part() =>
        Assert.DoesNotContain("Today otherwise", Rendered.File(ReportFiles.Html), StringComparison.Ordinal);

    [Fact]
    public void Advice_json_has_it_as_data()
    {
        using var json = JsonDocument.Parse(Rendered.File(ReportFiles.AdviceJson, InventedExceptions.Build()));
        var root = json.RootElement;
        var program = root.GetProperty("programs")[0];
        Assert.Equal(3, program.GetProperty("pauseDays").GetInt32());
        Assert.Equal("2026-07-17T07:00", program.GetProperty("pausedUntil").GetString());
        Assert.Equal("2026-07-15T23:00", program.GetProperty("takenOut")[0].GetProperty("until").GetString());
        Assert.Equal(["3", "4"], program.GetProperty("stationsOut")[0].GetProperty("stations").EnumerateArray().Select(s => s.GetString()));
        Assert.Equal((1, "2026-07-16T18:00"), (root.GetProperty("standing")[0].GetProperty("daysLeft").GetInt32(), root.GetProperty("standing")[0].GetProperty("until").GetString()));
        var exceptions = root.GetProperty("exceptions");
        Assert.Equal(("2026-07-16T07:00", "2026-07-16T07:00"), (program.GetProperty("growInBegins").GetString(), exceptions.GetProperty("growIns")[1].GetProperty("begins").GetString()));
        Assert.False(exceptions.GetProperty("growIns")[0].TryGetProperty("begins", out _) || root.GetProperty("programs")[1].TryGetProperty("growInBegins", out _));
        Assert.Equal(26, exceptions.GetProperty("handRuns")[0].GetProperty("stations")[0].GetProperty("minutes").GetDouble());
        Assert.Equal(1.5, exceptions.GetProperty("night")[0].GetProperty("value").GetDouble());
        var byHand = root.GetProperty("runByHand");
        Assert.Equal(("2026-07-15T07:00", "P1"), (byHand.GetProperty("firstPlay").GetString(), byHand.GetProperty("groups")[0].GetProperty("boxes")[0].GetProperty("program").GetString()));
        Assert.Equal(4.5, byHand.GetProperty("groups")[0].GetProperty("boxes")[1].GetProperty("stations")[0].GetProperty("runMinutes").GetDouble());
        Assert.Equal(0, root.GetProperty("boxesToVerify")[0].GetProperty("settings")[1].GetProperty("setting").GetDouble());
        Assert.Equal("2026-07-15T02:00", root.GetProperty("boxesToVerify")[0].GetProperty("checkedEarly").GetString());
        Assert.Equal("2026-07-15", root.GetProperty("boxesToVerify")[1].GetProperty("since").GetString());
        var notUsed = root.GetProperty("settingsNotUsed")[0];
        Assert.Equal(("A", "2026-07-15", 500d, 150d), (notUsed.GetProperty("controller").GetString(), notUsed.GetProperty("time").GetString(), notUsed.GetProperty("percent").GetDouble(), notUsed.GetProperty("max").GetDouble()));
        Assert.Equal(60, root.GetProperty("clockChange").GetProperty("minutes").GetDouble());
        Assert.Equal("closing", exceptions.GetProperty("season")[0].GetProperty("state").GetString());
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
