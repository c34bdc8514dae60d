using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Promises.Disk;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>What is taken away from a site in use is missed, by name: a site does not vanish with its description, nor an alarm with a folder that a command made.</summary>
public sealed class VanishedTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.HomeWithInbox();
    private readonly SiteFolder _site;

    public VanishedTests() => _site = SecondDay.Site(_home);

    public void Dispose() => _home.Dispose();

    [Fact]
    [Trait("Promise", "8")]
    public void Without_its_site_yaml_a_site_goes_on_by_its_last_good_description_and_says_so()
    {
        File.Delete(_site.SiteFile);
        Assert.Equal(0, Morning().ExitCode);
        Assert.Contains("site's description has errors", Sheet(), StringComparison.Ordinal);
        var doctor = RunningProgram.Run("doctor", "--home", _home.Path, "--quiet");
        Assert.Equal(1, doctor.ExitCode);
        Assert.Contains(doctor.Output.Split('\n'), line => line.Contains(_site.Name, StringComparison.Ordinal) && line.Contains(" description ", StringComparison.Ordinal) && line.Contains("site.yaml", StringComparison.Ordinal));
        Tried.Held(8, "a description that was deleted", 1);
    }

    [Fact]
    [Trait("Promise", "9")]
    public void A_site_that_may_not_be_looked_into_is_an_alarm_and_not_no_site()
    {
        Tool.Need("setpriv");
        Tool.Do("chmod", "000", _site.Path);
        try
        {
            var doctor = RunningProgram.Run(new ProgramStart("doctor", "--home", _home.Path, "--quiet") { Under = Tool.WithoutPrivileges });
            Assert.True(doctor.ExitCode == 1, doctor.ToString());
            Assert.Contains(_site.Name, doctor.Output, StringComparison.Ordinal);
        }
        finally
        {
            Tool.Do("chmod", "755", _site.Path);
        }

        Tried.Held(9, "a site that may not be looked into", 1);
    }

    [Fact]
    [Trait("Promise", "4")]
    public void An_inbox_that_is_gone_is_said_on_the_sheet_and_no_command_makes_it_anew()
    {
        Directory.Delete(_site.Inbox, recursive: true);
        Assert.Equal(0, RunningProgram.Run("log", "note", "C1", "--note", "x", "--home", _home.Path).ExitCode);
        Assert.Equal(0, Morning().ExitCode);
        Assert.False(Directory.Exists(_site.Inbox));
        Assert.Contains("nothing was taken from it", Sheet(), StringComparison.Ordinal);
        Tried.Held(4, "an inbox that is gone before a command", 1);
    }

    [Fact]
    [Trait("Promise", "9")]
    public void A_ledger_that_may_not_be_written_is_an_alarm()
    {
        Tool.Need("setpriv");
        Tool.Do("chmod", "a-w", _site.LedgerFile);
        var doctor = RunningProgram.Run(new ProgramStart("doctor", "--home", _home.Path, "--quiet") { Under = Tool.WithoutPrivileges });
        Assert.True(doctor.ExitCode == 1, doctor.ToString());
        Assert.Contains("No right to write", doctor.Output, StringComparison.Ordinal);
        Tried.Held(9, "a ledger that may not be written", 1);
    }

    private ProgramResult Morning() => RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-09");

    private string Sheet() => string.Join(' ', File.ReadAllText(Path.Combine(_site.ReportFolder(SecondDay.Date), "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
