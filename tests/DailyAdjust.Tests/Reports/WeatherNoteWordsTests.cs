using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>What is assumed of the last days' weather: what is the same of several days is said once, and much of it in one line above the round.</summary>
public class WeatherNoteWordsTests
{
    private static readonly DateOnly First = new(2026, 7, 8);

    [Fact]
    public void The_same_of_several_days_is_said_once() => Assert.Equal(
        ["Wed 8 July to Fri 10 July, Sun 12 July: wind taken as 2 m/s.", "Sat 11 July: not known.", "The forecast was set aside."],
        WeatherNoteWords.Assumed(Fresh(("wind taken as 2 m/s", [0, 1, 2, 4]), ("not known", [3]))).Select(p => p.ToString()));

    [Fact]
    public void Much_of_it_is_one_line_above_the_round_and_the_rest_is_folded_and_printed_after_it()
    {
        var fresh = Fresh(("wind taken as 2 m/s", [0, 1, 2, 4]), ("not known", [3])) with { Doubts = [new Phrase("the sun reads high")], SetAside = [new Phrase("3 values of sun")] };
        Assert.True(WeatherNoteWords.IsLong(fresh));
        Assert.Equal("Assumed or estimated: Wed 8 July to Sun 12 July. Some values were set aside. A sensor is doubtful.", WeatherNoteWords.Short(fresh).ToString());
        var page = Page(fresh);
        string[] order = ["Assumed or estimated: Wed 8 July to Sun 12 July.", "<details><summary>Which, and why</summary>", "Sat 11 July: not known.", "Round: what to change", "<section class=\"paper\">", "Sat 11 July: not known."];
        var at = 0;
        Assert.All(order, part => Assert.NotEqual(-1, at = page.IndexOf(part, at + 1, StringComparison.Ordinal)));
    }

    [Fact]
    public void A_little_stands_there_whole()
    {
        var fresh = Fresh(("wind taken as 2 m/s", [0, 1, 2]));
        Assert.False(WeatherNoteWords.IsLong(fresh));
        var page = Page(fresh);
        Assert.Contains("<li>Wed 8 July to Fri 10 July: wind taken as 2 m/s.</li>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("Which, and why", page, StringComparison.Ordinal);
    }

    private static Freshness Fresh(params (string What, int[] Days)[] notes) => InventedMorning.Build().Freshness with
    {
        AssumedNotes = [.. notes.SelectMany(n => n.Days.Select(d => new AssumedNote(First.AddDays(d), new Phrase(n.What)))).OrderBy(n => n.Date), new(null, new Phrase("The forecast was set aside."))],
    };

    private static string Page(Freshness fresh) => HtmlReportTests.Readable(Rendered.File(ReportFiles.Html, InventedMorning.Build() with { Freshness = fresh }));
}
