using System.Text;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports;
using DailyAdjust.Reports.Words;
using Xunit;

namespace DailyAdjust.Tests.Reports;

/// <summary>Commands that a sheet prints to be answered with.</summary>
public sealed partial class AnswersTests
{
    /// <summary>Every "dailyadjust log" of a report, with whatever follows it, is a command that ends with its site; nothing that only a script would add stands in it.</summary>
    [Theory]
    [InlineData(ReportFiles.FullText)]
    [InlineData(ReportFiles.Html)]
    public void A_sheet_prints_no_more_than_a_person_would_type(string file)
    {
        var all = OneLine(InventedMorning.Issue, file).Split("dailyadjust log ")[1..];
        Assert.InRange(all.Length, 6, 20);
        Assert.All(all, c => Assert.Matches(@"^[a-z-]+( (?!--home|--site)[^ ]+)+ --site quarry-bend([ .,;)]|$)", c));
        Assert.All(all, c => Assert.DoesNotContain("--home", c, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(ReportFiles.FullText)]
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

    /// <summary>One dial for the whole box is one question with one command; a dial for each program is a question for each.</summary>
    [Theory]
    [InlineData(PercentApplies.Controller, "setting A ____")]
    [InlineData(PercentApplies.Program, "setting A/P1 ____", "setting A/P2 ____", "setting A/P3 ____")]
    public void The_command_settles_what_the_question_about_a_setting_asks(PercentApplies applies, params string[] settled)
    {
        var sheet = InventedExceptions.Build();
        var asked = sheet.SettingsNotUsed[0];
        var box = asked with { Controller = asked.Controller with { Applies = applies }, Programs = [new("A", "P1"), new("A", "P2"), new("A", "P3")] };
        foreach (var file in new[] { ReportFiles.FullText, ReportFiles.Html })
        {
            var said = Commands(InventedMorning.Issue, file, sheet with { SettingsNotUsed = [box] }).Where(c => c.Contains("log setting", StringComparison.Ordinal));
            Assert.Equal(settled.Select(s => $"dailyadjust log {s} --site quarry-bend"), said);
        }
    }

    /// <summary>A folder, a box or a gauge may be named in several words: each stands as one word of the command, and as one cell of the logbook's line.</summary>
    [Theory]
    [InlineData("quarry-bend", "quarry-bend")]
    [InlineData("Quillback Bend", "\"Quillback Bend\"")]
    [InlineData("O'Hara", "\"O'Hara\"")]
    [InlineData("Größe_2.b", "Größe_2.b")]
    [InlineData("a $HOME", "'a $HOME'")]
    [InlineData("say \"it's\"", "'say \"it'\\''s\"'")]
    [InlineData("(north)", "\"(north)\"")]
    [InlineData("", "\"\"")]
    public void A_name_is_one_word_of_a_command(string name, string word)
    {
        Assert.Equal(word, ShellWord.Of(name));
        if (name.Length > 0)
        {
            foreach (var file in new[] { ReportFiles.FullText, ReportFiles.Html })
            {
                var report = Blank().Replace(System.Net.WebUtility.HtmlDecode(Tags().Replace(Written(InventedExceptions.Build(), InventedMorning.Issue with { SiteId = name }, file), " ")), " ");
                Assert.Contains($"dailyadjust log checked A --site {word}", report, StringComparison.Ordinal);
                Assert.DoesNotContain($"--site {(string.Equals(word, name, StringComparison.Ordinal) ? "\"" : name + " ")}", report, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void A_name_with_a_comma_is_one_cell_of_the_logbooks_line()
    {
        Assert.Equal("2026-07-15,rain,\"gauge:pond, north\",____,in", Shown(Answers.RainLine("pond, north", new(2026, 7, 15), "in")));
        Assert.Equal("2026-07-15 __:__,probe,\"A, B/3\",____,%", Shown(Answers.ProbeLine(new("A, B", "3"), new(2026, 7, 15))));
        Assert.Equal("2026-07-15,ran,\"A, B/3\",no", Shown(Answers.DidNotRunLine("A, B/3", new(2026, 7, 15), null, InventedMorning.Build().Site.Clock)));
        Assert.Equal("dailyadjust log setting \"Pump house/P1\" ____ --site s", Shown(Answers.Setting(new ProgramKey("Pump house", "P1"), "s")));

        static string Shown(Phrase line) => string.Concat(Typed.Pieces(line.ToString()).Select(p => p.Text));
    }

    /// <summary>A page shows what is to be typed as code, and nothing else as such; a terminal shows no mark of it.</summary>
    [Fact]
    public void What_is_to_be_typed_is_code_on_the_page()
    {
        var sheet = InventedExceptions.Build();
        var typed = sheet with { Programs = [sheet.Programs[0] with { Reason = $"is it mended? A setting, or {Reason.Checked} of B, hands it back" }, .. sheet.Programs.Skip(1)] };
        var issue = InventedMorning.Issue with { Notices = ["a file is damaged: see `dailyadjust check`", "another"] };
        var page = Written(typed, issue, ReportFiles.Html);
        var code = Code().Matches(page).Select(m => m.Groups["code"].Value).ToList();
        Assert.Contains("dailyadjust check", code);
        Assert.Contains("checked", code);
        Assert.Contains(code, c => c.Contains(",ran,A/3,no", StringComparison.Ordinal));
        Assert.True(code.Count(c => c.StartsWith("dailyadjust log ", StringComparison.Ordinal)) > 5, string.Join('\n', code));
        Assert.All(code, c => Assert.Matches("^(dailyadjust |[0-9]{4}-|checked$)", c));
        Assert.DoesNotContain("dailyadjust", Code().Replace(page, ""), StringComparison.Ordinal);
        foreach (var report in new[] { page, Written(typed, issue, ReportFiles.FullText) })
        {
            Assert.DoesNotContain(report, c => char.IsControl(c) && c != '\n');
        }

        Assert.DoesNotContain("`", page, StringComparison.Ordinal);
    }

    /// <summary>Backticks that a person wrote are the person's, whatever stands in them.</summary>
    [Theory]
    [InlineData("valve `2` stuck")]
    [InlineData("`checked` by Lee, still leaks")]
    [InlineData("see `dailyadjust log`")]
    [InlineData("`checked`")]
    public void Backticks_of_a_note_are_no_code_of_ours(string note)
    {
        var sheet = InventedExceptions.Build();
        Phrase reason = $"Off since Sun 3 May, \"{note}\": is that mended or over? A setting, or {Reason.Checked} of B, hands it back";
        var noted = sheet with { Programs = [sheet.Programs[0] with { Reason = reason }, .. sheet.Programs.Skip(1)] };
        var page = Written(noted, InventedMorning.Issue with { Notices = [$"a note of valve `3`, and `dailyadjust check`"] }, ReportFiles.Html);
        var shown = System.Net.WebUtility.HtmlDecode(page);
        Assert.Contains($"\"{note}\": is that mended or over? A setting, or <code>checked</code> of B", Blank().Replace(shown, " "), StringComparison.Ordinal);
        Assert.Contains("a note of valve `3`, and <code>dailyadjust check</code>", Blank().Replace(shown, " "), StringComparison.Ordinal);
    }

    /// <summary>What a person wrote stands in round brackets, or bare behind the order's name, and may read like a command of ours to the letter.</summary>
    [Theory]
    [InlineData("`checked`")]
    [InlineData("`dailyadjust check` first")]
    [InlineData("`log void`, then look")]
    [InlineData("is it \" `checked` \" now")]
    public void Nothing_that_a_person_wrote_is_code(string note)
    {
        var sheet = InventedExceptions.Build();
        var (first, box) = (sheet.Programs[0], sheet.BoxesToVerify[0]);
        var noted = sheet with
        {
            Programs = [first with { Reason = $"Must not run: hold: {note}.", Chain = [new Reason("must-not-run", $"Must not run: hold: {note}.", new Dictionary<string, double>())] }, .. sheet.Programs.Skip(1)],
            BoxesToVerify = [box with { Box = box.Box with { Note = note } }, .. sheet.BoxesToVerify.Skip(1)],
            Ground = sheet.Ground with { Spots = [new DrySpot(new("A", "3"), "green 3", "greens", new(sheet.Date, null), 9, null, note)] },
        };
        var page = Blank().Replace(System.Net.WebUtility.HtmlDecode(Written(noted, InventedMorning.Issue, ReportFiles.Html)), " ");
        Assert.Contains($"Must not run: hold: {note}.", page, StringComparison.Ordinal);
        Assert.InRange(page.Split($"({note})").Length, 3, 9);
        Assert.All(Code().Matches(page), c => Assert.Matches("^(dailyadjust log |[0-9]{4}-)", c.Groups["code"].Value));
    }

    private static string Written(MorningSheet sheet, SheetIssue issue, string file) => Encoding.UTF8.GetString(MorningReport.Render(sheet, issue)[file].Span);

    private static List<string> Commands(SheetIssue issue, string file = ReportFiles.FullText, MorningSheet? sheet = null) =>
        [.. Command().Matches(OneLine(issue, file, sheet)).Select(m => m.Value)];

    private static string OneLine(SheetIssue issue, string file, MorningSheet? sheet = null) =>
        Blank().Replace(System.Net.WebUtility.HtmlDecode(Tags().Replace(Written(sheet ?? InventedExceptions.Build(), issue, file), " ")), " ");

    [GeneratedRegex("dailyadjust log .+? --site quarry-bend")]
    private static partial Regex Command();

    [GeneratedRegex("<code>(?<code>[^<]*)</code>")]
    private static partial Regex Code();

    [GeneratedRegex("\\s+")]
    private static partial Regex Blank();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
