using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Commands that a sheet prints to be answered with.</summary>
public sealed partial class AnswersTests
{
    [Fact]
    public void A_sheet_prints_no_more_than_a_person_would_type() =>
        Assert.All(Commands(InventedMorning.Issue), c => Assert.Matches("^dailyadjust log .* --site quarry-bend$", c));

    [Theory]
    [InlineData(ReportFiles.Text)]
    [InlineData(ReportFiles.Html)]
    public void Every_question_has_its_command(string file)
    {
        var commands = Commands(InventedMorning.Issue, file);
        Assert.InRange(commands.Count, 6, 20);
        foreach (var said in new[] { "round 2026-07-13 done", "checked A", "run A/P1 90 %", "ran A no --time __:__ --until __:__", "setting A/P1 ____", "ran D/P1 yes --date 2026-07-15" })
        {
            Assert.Contains($"dailyadjust log {said} --site quarry-bend", commands, StringComparer.Ordinal);
        }
    }

    private static List<string> Commands(SheetIssue issue, string file = ReportFiles.Text)
    {
        var text = Encoding.UTF8.GetString(MorningReport.Render(InventedExceptions.Build(), issue)[file].Span);
        text = System.Net.WebUtility.HtmlDecode(Tags().Replace(text, " "));
        return [.. Command().Matches(string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))).Select(m => m.Value)];
    }

    [GeneratedRegex("dailyadjust log .+? --site quarry-bend")]
    private static partial Regex Command();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
