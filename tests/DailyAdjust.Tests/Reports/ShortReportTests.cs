using System.Text.RegularExpressions;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>report.txt: under 40 lines up to the changes of a large course, and never a change or an answer lost.</summary>
public sealed class ShortReportTests
{
    private const int MostLines = 39;
    private const int MostWithEverything = 60;

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
    [InlineData(MostWithEverything)]
    public void A_morning_with_everything_on_it_loses_no_change_and_names_what_it_leaves_to_the_page(int programs)
    {
        var sheet = Changes(programs, InventedExceptions.Build());
        var lines = Rendered.Lines(ReportFiles.Text, sheet);
        Assert.InRange(lines.Count, 20, MostLines);
        Assert.Equal(sheet.Programs.Select(p => $"{p.Key} {p.Present.Percent} → {p.Percent}"), ChangesIn(lines));
        Assert.Contains(lines, l => Regex.IsMatch(l, @", see report\.html|\d+ more: see report\.html", RegexOptions.None, TimeSpan.FromSeconds(5)));
        Assert.Contains(lines, l => l.StartsWith("Also in report.html: ", StringComparison.Ordinal));
    }

    /// <summary>Beyond that it grows by what the changes take.</summary>
    [Fact]
    public void On_a_course_that_is_larger_still_no_change_and_no_answer_is_lost()
    {
        var sheet = Changes(120, InventedExceptions.Build());
        var lines = Rendered.Lines(ReportFiles.Text, sheet);
        Assert.InRange(lines.Count, MostLines + 1, 50);
        Assert.Equal(sheet.Programs.Select(p => $"{p.Key} {p.Present.Percent} → {p.Percent}"), ChangesIn(lines));
        AllAnswersStand(sheet);
    }

    /// <summary>Two rounds, two gauges, ground and dials that nobody answered for, beside few and many changes.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(12)]
    [InlineData(60)]
    public void Whatever_waits_for_an_answer_has_its_whole_command_in_it(int programs)
    {
        var sheet = Changes(programs, InventedMorning.Build());
        AllAnswersStand(sheet with
        {
            Freshness = sheet.Freshness with
            {
                UnansweredRounds = [new(InventedMorning.Date.AddDays(-2), null), new(InventedMorning.Date.AddDays(-1), null)],
                PassedOverRounds = [InventedMorning.Date.AddDays(-9), InventedMorning.Date.AddDays(-7)],
                UnknownRain = [new UnknownRain("east", InventedMorning.Date.AddDays(-1), 1.016), new UnknownRain("shop", InventedMorning.Date.AddDays(-1), 0)],
            },
        });
    }

    /// <summary>Every title with the command of each of its questions, or with one for all of them.</summary>
    private static void AllAnswersStand(MorningSheet sheet)
    {
        var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, sheet).Select(l => l.Trim()));
        var groups = QuestionGroup.Of(new SheetView(sheet, InventedMorning.Issue));
        Assert.NotEmpty(groups);
        Assert.All(groups, group =>
        {
            Assert.Contains($"! {group.Title}: ", text, StringComparison.Ordinal);
            Assert.True(text.Contains(Plain(group.Together.Answer), StringComparison.Ordinal) || group.All.All(q => text.Contains(Plain(q.Answer), StringComparison.Ordinal)), $"{group.Title} has no answer");
        });
    }

    private static string Plain(Phrase words) => string.Concat(Typed.Pieces(words.ToString()).Select(p => p.Text));

    /// <summary>What changes what the hand does stands in every form of the round, the shortest among them.</summary>
    [Theory]
    [InlineData(1, "[ ] P1 Greens 4-6: MUST NOT RUN: leave the dial, take its starts out.", "[ ] P2 Greens 4-6: TURN ON, off → 120 %. Off since Monday: turn it on only if that is mended or over.", "in place of each start key in 2")]
    [InlineData(80, "P1 MUST NOT RUN: leave the dial, take its starts out", "P2 TURN ON, off → 120 % (only if mended or over) (2 starts for each", "1/2 of the minutes in each)")]
    public void What_changes_the_act_is_never_cut(int boxes, string starts, string mended, string split)
    {
        var change = InventedMorning.Build().Programs.Single(p => p.StopRule is not null);
        var off = change with { Advice = AdviceKind.Off, Percent = null, LeavesDial = true, Reason = Phrase.Verbatim(LongReason) };
        var on = change with
        {
            Advice = AdviceKind.Resume,
            Present = Setting.Off,
            Percent = 120,
            Fault = new Fault(InventedMorning.At(-2, 9, 0), "lateral broken", "", IsOwnNote: true),
            Condition = Phrase.Verbatim("Off since Monday: turn it on only if that is mended or over."),
            Because = Phrase.Verbatim(LongReason),
            Reason = Phrase.Verbatim("Off since Monday: turn it on only if that is mended or over. " + LongReason),
            InPlace = new StartsInPlace(2, 200, 2, null),
        };
        var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, InventedMorning.Ordinary() with
        {
            Programs = [.. Enumerable.Range(1, boxes).SelectMany(i => new[] { off with { Key = new($"C{i}", "P1") }, on with { Key = new($"C{i}", "P2") } })],
        }).Select(l => l.Trim()));
        foreach (var act in new[] { starts, mended, split })
        {
            Assert.Equal(boxes, Regex.Count(text, Regex.Escape(act), RegexOptions.None, TimeSpan.FromSeconds(5)));
        }
    }

    [Fact]
    public void A_reason_ends_where_a_part_of_it_ends_and_not_in_the_middle()
    {
        var change = InventedMorning.Build().Programs.Single(p => p.StopRule is not null) with { Reason = Phrase.Verbatim("Part of it would drain: " + LongReason) };
        var text = Rendered.File(ReportFiles.Text, InventedMorning.Ordinary() with { Programs = [change] });
        Assert.Contains("SET 90 → 60 %. Part of it would drain.\n", text, StringComparison.Ordinal);
    }

    private static readonly string LongReason = string.Join(' ', Enumerable.Repeat("because the ground at the far end lies in the shade of the old oaks", 4));

    [Fact]
    public void A_place_for_the_hose_begins_with_where_and_how_deep_and_keeps_what_to_know_whatever_its_name()
    {
        var sheet = InventedMorning.Ordinary();
        var name = string.Join(' ', Enumerable.Repeat("the low end behind the old pump house", 8));
        var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, sheet with
        {
            Driest = [sheet.Driest[0] with { Name = name, BeforeHose = Phrase.Verbatim("drain work, through Sat 18 July: ask before you hose") }],
        }).Select(l => l.Trim()));
        Assert.Contains("- B/7: hose on 0.12 in, about 640 gal, the low end behind the old pump house... Drain work, through Sat 18 July: ask before you hose.", text, StringComparison.Ordinal);
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
