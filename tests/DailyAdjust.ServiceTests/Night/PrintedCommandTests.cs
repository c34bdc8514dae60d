using System.Text.RegularExpressions;
using DailyAdjust.ServiceTests.Fallback;
using Xunit;

namespace DailyAdjust.ServiceTests.Night;

/// <summary>The commands that a sheet of a past date prints, typed with what `morning` says below it: they land on that morning.</summary>
public sealed partial class PrintedCommandTests : IDisposable
{
    private const string Date = "2026-06-10";
    private readonly FallbackHome _home = NightHome.Create();

    public PrintedCommandTests() => _home.Drop("yard-2026.csv", ExampleSite.WeatherUntil("2026-06-12 05:00"));

    private string Home => Path.GetDirectoryName(Path.GetDirectoryName(_home.Site.Path))!;

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Two_unanswered_rounds_are_answered_one_after_the_other()
    {
        _home.Morning(Date);
        _home.Run("log", "setting", "site", "30", "--date", Date, "--time", "18:00");
        _home.Morning("2026-06-11");
        var sheet = _home.Morning("2026-06-12");
        var rounds = Commands(sheet, "log round");
        Assert.NotEmpty(rounds);
        foreach (var round in rounds)
        {
            Type(round, "2026-06-12");
        }

        Assert.Equal(0, _home.Morning("2026-06-12").Freshness.GetProperty("unansweredRounds").GetArrayLength());
    }

    [Fact]
    public void Rounds_of_two_sheets_answered_at_one_time_are_two_entries()
    {
        _home.Morning(Date);
        _home.Morning("2026-06-11");
        string[] at = ["--date", "2026-06-12", "--time", "05:00"];
        Assert.StartsWith("Added:", _home.Run("log", ["round", Date, "done", .. at]), StringComparison.Ordinal);
        Assert.StartsWith("Added:", _home.Run("log", ["round", "2026-06-11", "done", .. at]), StringComparison.Ordinal);
        Assert.StartsWith("Known already:", _home.Run("log", ["round", Date, "done", .. at]), StringComparison.Ordinal);
        Assert.StartsWith("Added in place", _home.Run("log", ["round", Date, "done", "--except", "K1", .. at]), StringComparison.Ordinal);
    }

    [Fact]
    public void A_round_speaks_of_the_issue_that_was_there_whatever_is_issued_later()
    {
        _home.Run("log", "setting", "site", "30", "--date", "2026-06-09", "--time", "18:00");
        var asked = _home.Morning(Date).Json.GetProperty("programs").EnumerateArray().Where(p => p.GetProperty("advice").GetString() is "set").ToList();
        Assert.NotEmpty(asked);
        string[] done = [Date, "done", "--date", Date, "--time", "05:00"];
        Assert.StartsWith("Added:", _home.Run("log", ["round", .. done]), StringComparison.Ordinal);
        foreach (var _ in Enumerable.Range(0, 3))
        {
            var sheet = _home.Morning(Date);
            Assert.All(asked, p => Assert.Equal(
                p.GetProperty("percent").GetDouble(), sheet.Program(p.GetProperty("controller").GetString()!, p.GetProperty("program").GetString()!).GetProperty("setting").GetDouble()));
            Assert.StartsWith("Known already:", _home.Run("log", ["round", .. done]), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_was_run_by_hand_and_what_was_checked_shortens_the_lists_of_that_morning()
    {
        _home.Run("log", "ran", "pump", "no", "--date", Date, "--time", "01:10", "--until", "03:40");
        _home.Run("log", "power", "K2", "--date", Date);
        var sheet = _home.Morning(Date);
        Assert.Contains("K2 (behind the barn): without power at some time today. By the logbook", sheet.Text, StringComparison.Ordinal);
        Assert.Equal(Date, sheet.Json.GetProperty("boxesToVerify")[0].GetProperty("since").GetString());
        var run = Assert.Single(Commands(sheet, "log run "));
        Type(run);
        Type(Assert.Single(Commands(sheet, "log checked K2")));
        var after = _home.Morning(Date);
        Assert.False(after.Json.TryGetProperty("boxesToVerify", out _));
        Assert.NotEqual(run, Commands(after, "log run ").FirstOrDefault());
    }

    [Fact]
    public void A_loss_of_power_without_an_hour_is_on_that_days_sheet_and_until_it_is_checked()
    {
        _home.Run("log", "power", "site", "--date", Date, "--until", Date, "--note", "storm");
        var sheet = _home.Morning(Date);
        Assert.Contains("K1 (by the well): without power from some time today to some time today (storm).", sheet.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("00:00 today", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("K3 (ninth green): without power from some time yesterday to some time yesterday (storm).", _home.Morning("2026-06-11").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_check_before_the_power_was_back_and_a_setting_beyond_the_dial_are_asked_about()
    {
        _home.Run("log", "setting", "K1/P1", "85", "--date", "2026-06-08", "--time", "11:00");
        var added = _home.Ran("log", "setting", "K1/P1", "500", "--date", "2026-06-09", "--time", "11:00", "--by", "Lee");
        Assert.Contains("500 % is not on the dial of K1: it shows 0 to 200 % in steps of 5; the entry is kept and not used", added.Error, StringComparison.Ordinal);
        _home.Run("log", "power", "K2", "--date", Date, "--time", "01:00", "--until", "03:40");
        _home.Run("log", "checked", "K2", "--date", Date, "--time", "02:00");
        var sheet = _home.Morning(Date);
        Assert.Contains("Checked 02:00 today, before its power was back: that does not count.", sheet.Text, StringComparison.Ordinal);
        Assert.Contains("Upper greens (K1/P1): setting 500 % (11:00 yesterday, Lee) is beyond what the box can do (0-200 %): not used. Read the dial, then:", sheet.Text, StringComparison.Ordinal);
        Assert.Equal(85, sheet.Program("K1", "P1").GetProperty("setting").GetDouble());
        Assert.Equal(500, sheet.Json.GetProperty("settingsNotUsed")[0].GetProperty("percent").GetDouble());
        Type(Assert.Single(Commands(sheet, "log setting K1/P1")).Replace("____", "90", StringComparison.Ordinal));
        var after = _home.Morning(Date);
        Assert.False(after.Json.TryGetProperty("settingsNotUsed", out _));
        Assert.Equal(90, after.Program("K1", "P1").GetProperty("setting").GetDouble());
    }

    [Fact]
    public void Log_says_where_an_entry_lies_beyond_all_that_is_there()
    {
        Assert.DoesNotContain("Note:", _home.Run("log", "setting", "K1/P1", "85", "--date", Date), StringComparison.Ordinal);
        _home.Morning(Date);
        Assert.DoesNotContain("Note:", _home.Run("log", "setting", "K1/P1", "80", "--date", Date), StringComparison.Ordinal);
        Assert.Contains("Note: it lies after what is there (weather through 2026-06-1", _home.Run("log", "setting", "K1/P1", "80", "--date", "2026-06-20"), StringComparison.Ordinal);
        Assert.Contains("newest sheet of 2026-06-10)", _home.Run("log", "checked", "K1"), StringComparison.Ordinal);
        Assert.DoesNotContain("Note:", _home.Run("log", "hold", "K1", "--date", "2026-06-20", "--until", "2026-06-22"), StringComparison.Ordinal);
        Assert.Contains("Note: it lies before the balance begins (2026-06-01) and changes nothing.", _home.Run("log", "hose", "K1/1", "0.1", "in", "--date", "2026-05-20"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_does_not_know_where_its_home_lies_nor_what_day_it_is()
    {
        Assert.EndsWith($"To answer it as of its own morning, add: --date {Date} --time 05:00 --home {Home}", _home.Run("morning", "--date", Date).TrimEnd(), StringComparison.Ordinal);
        Assert.All(Commands(_home.Morning("2026-06-11"), "log "), command => Assert.DoesNotContain("--home", command, StringComparison.Ordinal));
    }

    /// <summary>Runs a printed command as a person would type it, with the options that `morning` names last.</summary>
    private void Type(string command, string date = Date)
    {
        var result = RunningProgram.Run([.. command.Split(' ')[1..], "--date", date, "--time", "05:00", "--home", Home]);
        Assert.True(result.ExitCode == 0, $"{command}\n{result}");
        Assert.StartsWith("Added:", result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Note:", result.Output, StringComparison.Ordinal);
    }

    private static List<string> Commands(FallbackSheet sheet, string which) =>
        [.. Command().Matches(sheet.Text).Select(m => m.Value).Where(c => c.Contains(which, StringComparison.Ordinal)).Distinct()];

    [GeneratedRegex(@"dailyadjust log (?:(?!dailyadjust).)+? --site \S+")]
    private static partial Regex Command();
}
