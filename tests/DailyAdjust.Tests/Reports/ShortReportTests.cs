using System.Text.RegularExpressions;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>report.txt: under 40 lines, whatever the morning, and never a change lost.</summary>
public sealed class ShortReportTests
{
    private const int MostLines = 39;

    [Fact]
    public void Every_morning_takes_under_40_lines()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            Assert.InRange(Rendered.Lines(ReportFiles.Text, morning).Count, 12, MostLines);
        }
    }

    [Fact]
    public void An_ordinary_morning_says_where_what_why_when_to_switch_it_off_and_where_to_take_the_hose()
    {
        var text = Rendered.File(ReportFiles.Text, InventedMorning.Ordinary());
        Assert.Contains("1. A, behind the second tee\n   [ ] P2 Fairways 1-3: SKIP, 100 % → off. 0.64 in fell since Tuesday", text, StringComparison.Ordinal);
        Assert.Contains("[ ] P1 Greens 4-6: SET 90 → 60 %. =half of last night's run drained.", text, StringComparison.Ordinal);
        Assert.Contains("\n       Switch it off if gauge shop shows 0.22 in or more before 21:30 today.\n", text, StringComparison.Ordinal);
        Assert.Contains("hose on 0.12 in, about 640 gal", text, StringComparison.Ordinal);
        Assert.Contains("Did it run? Fairways 1-3 (A/P2) 21:30 yesterday to 00:40.", text, StringComparison.Ordinal);
        Assert.Contains("Visit 5, leave 2, off 0\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Minutes_to_key_in_stand_with_their_program() =>
        Assert.Contains("station 1: 10 → 7 min; station 2: 12 → 8.5 min;", Rendered.File(ReportFiles.Text), StringComparison.Ordinal);

    [Fact]
    public void What_waits_for_an_answer_stands_before_the_round_with_its_answer()
    {
        var sheet = InventedMorning.Build();
        var text = Rendered.File(ReportFiles.Text, sheet with { Programs = [.. sheet.Programs.Where(p => p.Key.Controller is "B" or "E")] });
        Assert.InRange(text.IndexOf("\n  dailyadjust log round 2026-07-13 done --site quarry-bend\n", StringComparison.Ordinal), 1, text.IndexOf("ROUND:", StringComparison.Ordinal));
    }

    /// <summary>As many boxes and programs as a large course has, each program with another number: the more of them, the less is said of each.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(12)]
    [InlineData(24)]
    [InlineData(60)]
    [InlineData(100)]
    [InlineData(160)]
    public void However_many_changes_there_are_every_one_stands_in_it(int programs)
    {
        var sheet = Changes(programs, InventedMorning.Ordinary());
        var lines = Rendered.Lines(ReportFiles.Text, sheet);
        Assert.InRange(lines.Count, 8, MostLines);
        Assert.Equal(sheet.Programs.Select(p => $"{p.Key} {p.Present.Percent} → {p.Percent}"), ChangesIn(lines));
        Assert.Contains($"Visit {programs}, leave 0, off 0", lines, StringComparer.Ordinal);
    }

    /// <summary>The same on a morning on which everything happens: what has no room is counted or named.</summary>
    [Theory]
    [InlineData(3)]
    [InlineData(40)]
    [InlineData(120)]
    public void A_morning_with_everything_on_it_loses_no_change_and_names_what_it_leaves_to_the_page(int programs)
    {
        var sheet = Changes(programs, InventedExceptions.Build());
        var lines = Rendered.Lines(ReportFiles.Text, sheet);
        Assert.InRange(lines.Count, 20, MostLines);
        Assert.Equal(sheet.Programs.Select(p => $"{p.Key} {p.Present.Percent} → {p.Percent}"), ChangesIn(lines));
        Assert.Contains(lines, l => Regex.IsMatch(l, @", see report\.html|\d+ more: see report\.html", RegexOptions.None, TimeSpan.FromSeconds(5)));
        Assert.Equal(programs > 3, lines.Any(l => l.StartsWith("Also in report.html: ", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_has_to_be_done_at_once_has_room_before_what_is_to_be_known()
    {
        var text = Rendered.File(ReportFiles.Text, InventedExceptions.Build());
        Assert.Contains("05:00 to 06:00: A and B together", text, StringComparison.Ordinal);
        Assert.Contains("Verify these boxes: they lost power", text, StringComparison.Ordinal);
    }

    /// <summary>A command that is cut in two is worse than none.</summary>
    [Fact]
    public void A_command_stands_in_it_whole_or_not_at_all()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            Assert.All(
                Rendered.Lines(ReportFiles.Text, morning).Where(l => l.Contains("dailyadjust log", StringComparison.Ordinal)),
                line => Assert.Contains("--site quarry-bend", line, StringComparison.Ordinal));
        }
    }

    /// <summary>Up to four programs on a box, each to be set to another number.</summary>
    private static MorningSheet Changes(int programs, MorningSheet sheet)
    {
        var change = InventedMorning.Build().Programs.Single(p => p.StopRule is not null);
        return sheet with
        {
            Programs = [.. Enumerable.Range(0, programs).Select(i => change with { Key = new ProgramKey($"C{(i / 4) + 1}", $"P{(i % 4) + 1}"), Present = new(5 + (5 * (i % 11))), Percent = 60 + (5 * (i % 13)) })],
        };
    }

    /// <summary>"C1/P1 90 → 60" in the order in which they stand, in whichever form.</summary>
    private static IEnumerable<string> ChangesIn(IReadOnlyList<string> lines)
    {
        var box = "";
        var round = string.Join('\n', lines.SkipWhile(l => !l.StartsWith("ROUND", StringComparison.Ordinal)).TakeWhile(l => !l.StartsWith("Visit", StringComparison.Ordinal)));
        foreach (Match match in Regex.Matches(round, @"(?<box>\bC\d+)|(?<program>P\d)(?: Greens 4-6: SET)? (?<change>\d+ → \d+) %", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)))
        {
            if (match.Groups["box"].Success)
            {
                box = match.Value;
            }
            else
            {
                yield return $"{box}/{match.Groups["program"].Value} {match.Groups["change"].Value}";
            }
        }
    }
}
