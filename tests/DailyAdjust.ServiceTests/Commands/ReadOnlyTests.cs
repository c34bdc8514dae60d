using System.Security.Cryptography;
using DailyAdjust.ServiceTests.Promises;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Commands that print change nothing.</summary>
[Trait("Promise", "8")]
public sealed class ReadOnlyTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Check_of_a_site_without_a_ledger_makes_none()
    {
        var site = ExampleSite.PutInto(_home);
        var result = Run("check");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Ready: 2 controllers, 5 programs, 15 stations", result.Output, StringComparison.Ordinal);
        Assert.False(File.Exists(site.LedgerFile));
    }

    [Fact]
    public void Check_sorts_what_must_from_what_would_help_and_names_every_place()
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile)
            .Replace("satisfy:", "satisfyy:", StringComparison.Ordinal)
            .Replace("root_depth: 8 in", "root_depth: 8", StringComparison.Ordinal));
        var result = Run("check");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("site.yaml:14:3", result.Output, StringComparison.Ordinal);
        Assert.Contains("root_depth", result.Output, StringComparison.Ordinal);
        Assert.Contains("Not ready: 2 problems must be put right.", result.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("weather")]
    [InlineData("balance", "--from", "2026-06-10", "--to", "2026-06-12")]
    [InlineData("advice", "--date", "2026-06-12")]
    [InlineData("advice")]
    [InlineData("explain", "C1/P2")]
    [InlineData("explain", "C1/3", "--date", "2026-06-12")]
    [InlineData("replay", "--from", "2026-06-05", "--to", "2026-06-12")]
    [InlineData("summary", "--from", "2026-06-01", "--to", "2026-06-10")]
    [InlineData("visits", "--boxes", "1", "--date", "2026-06-12")]
    [InlineData("weather", "guess", "HOURLY")]
    [InlineData("mail")]
    public void Printing_leaves_every_file_as_it_was(params string[] arguments)
    {
        ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        var before = HashOfHome();
        var result = RunningProgram.Run([.. arguments.Select(a => a.Replace("HOURLY", ExampleSite.Weather, StringComparison.Ordinal)), "--home", _home.Path]);
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.NotEmpty(result.Output);
        Assert.Equal(before, HashOfHome());
        Tried.Held(8, "commands that only print", 1);
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("season")]
    [InlineData("weather", "normals")]
    [InlineData("advice", "--date", "2020-01-01")]
    [InlineData("explain", "C9/P9")]
    public void What_cannot_be_answered_changes_nothing_either(params string[] arguments)
    {
        ExampleSite.TakenIn(_home);
        var before = HashOfHome();
        var result = RunningProgram.Run([.. arguments, "--home", _home.Path]);
        Assert.Equal(2, result.ExitCode);
        Assert.NotEmpty(result.Error);
        Assert.Equal(before, HashOfHome());
        Tried.Held(8, "commands that only print", 1);
    }

    [Fact]
    public void The_demos_home_is_left_as_it_was_by_every_command_that_prints()
    {
        Assert.Equal(0, RunningProgram.Run("demo", "--home", _home.Path).ExitCode);
        string[] commands = ["check", "weather", "balance", "advice", "explain B1/A", "replay --from 2026-06-01 --to 2026-07-15", "plan", "season", "summary", "visits --boxes 2", "weather normals", "mail"];
        var before = HashOfHome();
        foreach (var command in commands)
        {
            var result = RunningProgram.Run([.. command.Split(' '), "--home", _home.Path]);
            Assert.True(result.ExitCode == 0 || (result.ExitCode == 2 && command is "weather normals"), command + " " + result);
            Assert.True(string.Equals(before, HashOfHome(), StringComparison.Ordinal), command);
        }

        Tried.Held(8, "commands that only print", commands.Length);
    }

    [Fact]
    public void An_issued_advice_is_explained_as_of_its_sheet_whatever_came_later()
    {
        ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        var then = Run("explain", "C1/P2", "--date", "2026-06-10").Output;
        Run("log", "hose", "C1/3", "0.3", "in", "--time", "2026-06-09 12:00");
        Assert.Equal(then, Run("explain", "C1/P2", "--date", "2026-06-10").Output);
    }

    [Theory]
    [InlineData("weather")]
    [InlineData("balance")]
    [InlineData("advice")]
    [InlineData("explain", "C1/P2")]
    public void Before_anything_came_in_it_says_what_to_do(params string[] arguments)
    {
        ExampleSite.PutInto(_home);
        var result = Run(arguments);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("dailyadjust ingest", result.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("csv", "date,station,eto_mm,eto_basis,rain_mm,tmax_c,tmin_c,estimated")]
    [InlineData("json", "[")]
    [InlineData("table", "date ")]
    public void Every_format_is_printed(string format, string begin)
    {
        ExampleSite.TakenIn(_home);
        Assert.StartsWith(begin, Run("weather", "--format", format).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Stored_advice_of_several_mornings_is_printed_as_it_was_issued()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        Run("morning", "--date", "2026-06-11");
        var first = File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "advice.csv"));
        var second = File.ReadAllLines(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 11)), "advice.csv")).Skip(1);
        Assert.Equal(first + string.Join('\n', second) + "\n", Run("advice", "--from", "2026-06-01", "--to", "2026-06-30", "--format", "csv").Output);
    }

    private string HashOfHome()
    {
        var entries = Directory.GetFileSystemEntries(_home.Path, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal);
        return string.Join('\n', entries.Select(entry => $"{entry} {(Directory.Exists(entry) ? "folder" : Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(entry))))}"));
    }

    private ProgramResult Run(params string[] arguments) => InProcess.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
