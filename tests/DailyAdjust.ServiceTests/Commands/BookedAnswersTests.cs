using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;
using DailyAdjust.Service.Sites;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>What is said back of a round sheet that came back.</summary>
public sealed class BookedAnswersTests
{
    private static readonly DateOnly Date = new(2026, 6, 10);

    private static readonly Controller Box = new() { Id = "C1", Place = "pump house", Programs = [.. Enumerable.Range(1, 20).Select(n => new WateringProgram { Id = $"P{n}", Name = n == 1 ? "Practice greens" : "", Starts = [], Days = new WaterDays.Weekdays([]) })] };

    [Fact]
    public void A_line_says_what_was_found_and_what_was_set()
    {
        LogEntry found = Set("P1", 70) with { Text = LogEntry.Found };
        string[] said =
        [
            .. new LogEntry[][]
            {
                [Set("P1", 60)], [found, Set("P1", 60)], [found, Set("P1", 70)], [found], [Set("P1", 0)], [Set("P1", null) with { Text = LogEntry.NotTurned }],
                [Set("P1", 0) with { Until = new(Date.AddDays(3), new(13, 0)) }],
            }.Select(row => BookedAnswers.Lines([Box], row).Single()),
        ];
        const string Begins = "  C1/P1 Practice greens (pump house): ", Ends = "; counts from 2026-06-10 13:00";
        Assert.Equal(
            ["set to 60 %", "70 % found, set to 60 %", "70 % found and left", "70 % found", "off", "nothing was turned", "paused until 2026-06-13 13:00"],
            said.Select(s => s[Begins.Length..^Ends.Length]));
        Assert.All(said, s => Assert.True(s.StartsWith(Begins, StringComparison.Ordinal) && s.EndsWith(Ends, StringComparison.Ordinal), s));
    }

    [Fact]
    public void A_long_file_is_told_in_twelve_lines_and_a_count()
    {
        var lines = BookedAnswers.Lines([Box], [.. Enumerable.Range(1, 20).Select(n => Set($"P{n}", 60))]).ToList();
        Assert.Equal((13, "  and 8 more"), (lines.Count, lines[^1]));
    }

    private static LogEntry Set(string program, double? percent) => new()
    {
        Time = new(Date, new(13, 0)),
        Kind = LogKind.Setting,
        Where = new(PlaceKind.Program, "C1", program),
        Value = percent,
        Sheet = Date,
        Issue = 1,
    };
}
