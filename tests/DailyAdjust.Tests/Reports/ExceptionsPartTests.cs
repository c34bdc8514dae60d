using System.Text.Json;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What is otherwise than on an ordinary day, in every file of the report.</summary>
public sealed class ExceptionsPartTests
{
    private static readonly string[] Said =
    [
        "Water in by hand: 0.25 in at area:greens, by 20:00 today (granular, by R. Vance)",
        "Green 1 (A/1): 26 min, as 3 runs of at most 10 min, 25 min apart (0.16 in is left)",
        "take out the start of 21:00 today. It must not run: event, club final.",
        "take out 2 stations 3 and 4, from 21:00 today on. hold: drain work.",
        "day 3 of 12: key in 3 starts (07:00 10:00 13:00) x 4 min, every day.",
        "\"leak at the 6th\" (Pat)",
        "D: shut from 17:00 yesterday until 17:00 today (0.37 in at gauge shop).",
        "taken not to have run. If it did: dailyadjust log ran D/P1 yes --date 2026-07-15 --site quarry-bend",
        "Cold caution: 35 °F forecast for tonight, below 40 °F. Do not water frozen ground, and watch for ice on paths. Tonight's starts must not run.",
        "Wind caution: 14 mph last night; tonight is not forecast, above 10 mph. Sprinklers throw unevenly.",
        "The whole site may run 60 % of its base minutes' water.",
        "At most: rough off, greens 100 %.",
        "Lock out the electricity of pump and box before you open either.",
        "When a box is done: dailyadjust log checked E --site quarry-bend",
        "area:greens: no water, wetting agent. Ordered by R. Vance. From 06:00 tomorrow. Until 18:00 tomorrow, 1 day left.",
        "C/P1: grow-in: new sod. Through Fri 24 July, 9 days left.",
    ];

    [Fact]
    public void Text_and_page_say_the_same()
    {
        var text = Plain(Rendered.File(ReportFiles.Text, InventedExceptions.Build()));
        var page = Plain(System.Net.WebUtility.HtmlDecode(Rendered.File(ReportFiles.Html, InventedExceptions.Build())));
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
        Assert.Equal(26, exceptions.GetProperty("handRuns")[0].GetProperty("stations")[0].GetProperty("minutes").GetDouble());
        Assert.Equal(1.5, exceptions.GetProperty("night")[0].GetProperty("value").GetDouble());
        Assert.Equal("closing", exceptions.GetProperty("season")[0].GetProperty("state").GetString());
    }

    private static string Plain(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
