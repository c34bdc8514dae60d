using DailyAdjust.Ledger;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>The demo's season, through the real program.</summary>
public sealed class DemoTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_prints_its_last_sheet_which_shows_every_kind_of_work_and_says_where_it_lies()
    {
        var result = Demo();
        Assert.True(result.ExitCode == 0, result.ToString());
        var site = Assert.Single(_home.Home.Sites());
        var folder = site.ReportFolder(new DateOnly(2026, 7, 16));
        Assert.StartsWith(File.ReadAllText(Path.Combine(folder, "report.txt")), result.Output, StringComparison.Ordinal);
        Assert.Contains(folder, result.Output, StringComparison.Ordinal);
        var advice = CsvRows.Of(File.ReadAllText(Path.Combine(folder, "advice.csv")));
        var kinds = advice.Rows.Select(row => advice.Text(row, "advice")).ToHashSet(StringComparer.Ordinal);
        Assert.Superset(new HashSet<string>(["skip", "set", "resume", "leave"], StringComparer.Ordinal), kinds);
    }

    [Fact]
    public void Run_again_it_prints_the_same_sheet_and_issues_nothing_anew()
    {
        var first = Demo().Output;
        Assert.Equal(first, Demo().Output);
    }

    [Fact]
    public void Kept_depletions_save_time_and_change_nothing()
    {
        Demo();
        var site = Assert.Single(_home.Home.Sites());
        var kept = Balance();
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write))
        {
            Assert.NotNull(ledger.States.Get(new DateOnly(2026, 7, 1)));
            ledger.InvalidateFrom(new DateOnly(2026, 4, 1));
            Assert.Null(ledger.States.NewestUpTo(DateOnly.MaxValue));
        }

        Assert.Equal(kept, Balance());
    }

    [Fact]
    public void Without_a_home_it_goes_into_the_working_folder_where_other_commands_find_it()
    {
        var demo = RunningProgram.Run(new ProgramStart("demo") { WorkingFolder = _home.Path });
        Assert.True(demo.ExitCode == 0, demo.ToString());
        var explain = RunningProgram.Run(new ProgramStart("check") { WorkingFolder = _home.Path });
        Assert.True(explain.ExitCode == 0, explain.ToString());
    }

    private ProgramResult Demo() => RunningProgram.Run("demo", "--home", _home.Path);

    private string Balance() => RunningProgram.Run("balance", "--home", _home.Path, "--from", "2026-07-05", "--format", "csv").Output;
}
