using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Commands that a sheet prints to be answered with.</summary>
public sealed partial class AnswersTests
{
    [Fact]
    public void Todays_sheet_prints_no_more_than_a_person_would_type() =>
        Assert.All(Commands(InventedMorning.Issue), c => Assert.Matches("^dailyadjust log .* --site quarry-bend$", c));

    [Theory]
    [InlineData(ReportFiles.Text)]
    [InlineData(ReportFiles.Html)]
    public void A_sheet_of_another_date_books_its_answers_on_its_own_morning_and_a_home_that_is_not_found_is_named(string file)
    {
        var commands = Commands(InventedMorning.Issue with { AnsweredAt = new(2026, 7, 15, 4, 50, 0), Home = "/srv/two courses" }, file);
        Assert.InRange(commands.Count, 6, 20);
        Assert.All(commands, c => Assert.EndsWith(" --site quarry-bend --home \"/srv/two courses\"", c, StringComparison.Ordinal));
        Assert.All(commands, c => Assert.Contains(" --date 2026-07-15 ", c, StringComparison.Ordinal));
        string Said(string what) => commands.First(c => c.Contains(what, StringComparison.Ordinal));
        Assert.Contains("round 2026-07-13 done --date 2026-07-15 --time 04:50 ", Said("log round"), StringComparison.Ordinal);
        Assert.Contains("checked A --date 2026-07-15 --time 04:50 ", Said("log checked A"), StringComparison.Ordinal);
        Assert.Contains("run A/P1 90 % --date 2026-07-15 --time 04:50 ", Said("log run"), StringComparison.Ordinal);
        Assert.Contains("ran A no --date 2026-07-15 --time __:__ --until __:__ ", Said("log ran A no"), StringComparison.Ordinal);
        Assert.Contains("setting A/P1 ____ --date 2026-07-15 --time 04:50 ", Said("log setting"), StringComparison.Ordinal);
        Assert.Contains("ran D/P1 yes --date 2026-07-15 --site", Said("log ran D/P1"), StringComparison.Ordinal);
    }

    private static List<string> Commands(SheetIssue issue, string file = ReportFiles.Text)
    {
        var text = Encoding.UTF8.GetString(MorningReport.Render(InventedExceptions.Build(), issue)[file].Span);
        text = System.Net.WebUtility.HtmlDecode(Tags().Replace(text, " "));
        return [.. Command().Matches(string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).Select(m => m.Value)];
    }

    [GeneratedRegex("dailyadjust log .+? --site quarry-bend( --home \"[^\"]*\")?")]
    private static partial Regex Command();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
