using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Water;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Languages;
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
        Assert.Contains("1. A, behind the second tee\n   [ ] P2 Fairways 1-3: SKIP, 100 % → off; on again Sat 18 July if dry. 0.64 in fell since\n     Tuesday", text, StringComparison.Ordinal);
        Assert.Contains("[ ] P1 Greens 4-6: SET 90 → 60 %. =half of last night's run drained.", text, StringComparison.Ordinal);
        Assert.Contains("\n       Switch it off if gauge shop shows 0.22 in or more before 21:30 today.\n", text, StringComparison.Ordinal);
        Assert.Contains("hose on 0.12 in, about 640 gal", text, StringComparison.Ordinal);
        Assert.Contains("Did it run? Fairways 1-3 (A/P2) 21:30 yesterday to 00:40.", text, StringComparison.Ordinal);
        Assert.Contains("Visit 5, leave 2, off 0\n", text, StringComparison.Ordinal);
    }

    /// <summary>Beside each change, together, or counted: and not before all that is only ticked or known has given way.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(9)]
    [InlineData(12)]
    [InlineData(24)]
    [InlineData(60)]
    [InlineData(160)]
    public void When_to_switch_off_after_rain_is_never_left_out_in_silence(int programs)
    {
        foreach (var morning in new[] { InventedMorning.Ordinary(), InventedMorning.Build(), InventedExceptions.Build() })
        {
            var sheet = Changes(programs, morning);
            sheet = sheet with { Programs = [.. sheet.Programs.Select((p, i) => p with { StopRule = p.StopRule! with { RainMm = 5.08 + (0.508 * (i % 3)) } })] };
            var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, sheet).Select(l => l.Trim()));
            var beside = Regex.Count(text, "Switch it off if gauge shop shows 0.2[024] in or more before 21:30 today.", RegexOptions.None, TimeSpan.FromSeconds(5));
            var together = Regex.Match(text, @"Switch off after rain: (?<all>.+? before 21:30 today\.)", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).Groups["all"].Value;
            var count = $"{programs} program{(programs == 1 ? "" : "s")}";
            var isCounted = text.Contains($"When to switch off after rain: {count}, see report.html.", StringComparison.Ordinal)
                || text.Contains($"Also in report.html: When to switch off after rain ({count})", StringComparison.Ordinal);
            Assert.Equal(programs, isCounted ? programs : beside + Regex.Count(together, @"C\d+/P\d", RegexOptions.None, TimeSpan.FromSeconds(5)));
            if (isCounted)
            {
                Assert.DoesNotContain("Did it run? Fairways", text, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Programs_of_one_rule_share_it_where_there_is_little_room()
    {
        var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, Changes(12, InventedMorning.Ordinary())).Select(l => l.Trim()));
        Assert.Contains("Switch off after rain: C1/P1, C1/P2, C1/P3, C1/P4, C2/P1, C2/P2, C2/P3, C2/P4, C3/P1, C3/P2, C3/P3, C3/P4 with 0.22 in at shop before 21:30 today.", text, StringComparison.Ordinal);
    }

    /// <summary>A quoted note that is answered tells the hand nothing; one that is not keeps its condition.</summary>
    [Fact]
    public void Quoted_notes_give_way_before_when_to_switch_off_does()
    {
        var sheet = Changes(16, InventedMorning.Ordinary());
        var note = Phrase.Verbatim("Off since Mon 13 July, \"" + LongReason + "\".");
        var text = string.Join(' ', Rendered.Lines(ReportFiles.Text, sheet with
        {
            Programs = [.. sheet.Programs.Select(p => p with { Advice = AdviceKind.Resume, Present = Setting.Off, Condition = note, Fault = new Fault(InventedMorning.At(-2, 9, 0), "broken", "", IsOwnNote: true) })],
        }).Select(l => l.Trim()));
        Assert.DoesNotContain("old oaks", text, StringComparison.Ordinal);
        Assert.Equal(16, Regex.Count(text, Regex.Escape("(only if mended or over)"), RegexOptions.None, TimeSpan.FromSeconds(5)));
        Assert.Contains("Switch off after rain: C1/P1, ", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_headline_is_that_of_the_page()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            var page = HtmlReportTests.Readable(Rendered.File(ReportFiles.Html, morning));
            var lead = Regex.Match(page, "<p class=\"lead\">(?<said>[^<]*)</p>", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(5)).Groups["said"].Value;
            Assert.Contains("hose", lead, StringComparison.Ordinal);
            Assert.StartsWith(lead, string.Join(' ', Rendered.Lines(ReportFiles.Text, morning).Skip(1).Select(l => l.Trim())), StringComparison.Ordinal);
            Assert.StartsWith(lead, string.Join(' ', Rendered.Lines(ReportFiles.FullText, morning).Skip(1).Select(l => l.Trim())), StringComparison.Ordinal);
        }
    }

    /// <summary>However long the words of a language are, a skip says why and when it is over.</summary>
    [Fact]
    public void A_skip_keeps_the_first_words_of_its_reason_and_the_day_after_it_in_every_language()
    {
        var skip = InventedSites.With(AdviceKind.Skip).Programs[0] with { Name = "Fairways one, two and three beyond the creek", Reason = Phrase.Verbatim("1.06 in of rain since Wed 15 July at the gauge behind the barn: it can wait.") };
        var sheet = Changes(14, InventedMorning.Ordinary());
        var text = string.Join(' ', Encoding.UTF8.GetString(MorningReport.Render(sheet with { Programs = [skip, .. sheet.Programs] }, InventedMorning.Issue, SheetLanguages.Of(SheetLanguage.Spanish))[ReportFiles.Text].Span).Split('\n').Select(l => l.Trim()));
        Assert.Contains("SALTAR, 100 % → apagado; encender otra vez el sáb 18 de julio si no llueve. 1.06 in of rain since Wed 15 July at the gauge behind the barn.", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_limit_of_water_that_was_passed_is_said_and_since_when_it_is_counted()
    {
        var sheet = InventedMorning.Ordinary();
        var use = new LimitUse(LimitKind.Day, 378_541, new(2026, 5, 9), 454_249, IsMetered: false, 5);
        const string Said = "Permit, a day: most on Sat 9 May, 120,000 gal of 100,000 gal, 120 % (estimated). Passed on 5 days since 15 April.";
        string Text(string file, int over)
        {
            var passed = sheet with { Water = sheet.Water with { SeasonFrom = new(2026, 4, 15), Limits = [use with { Over = over }] } };
            return string.Join(' ', HtmlReportTests.Readable(Rendered.File(file, passed)).Split('\n').Select(l => l.Trim()));
        }

        Assert.Contains("Water limits passed: permit, 100,000 gal a day: on 5 days since 15 April.", Text(ReportFiles.Text, 5), StringComparison.Ordinal);
        Assert.Contains("Water limits passed: permit, 100,000 gal a day: on 5 days since 15 April.", Text(ReportFiles.FullText, 5), StringComparison.Ordinal);
        Assert.Contains(Said, Text(ReportFiles.Html, 5), StringComparison.Ordinal);
        Assert.DoesNotContain("Water limits passed", Text(ReportFiles.Text, 0), StringComparison.Ordinal);
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
