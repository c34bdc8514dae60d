using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Mail;
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

    [Theory]
    [Trait("Promise", "7")]
    [InlineData(false, "is gone, but backups or reports of it lie there")]
    [InlineData(true, "is empty, but backups or reports of it lie there")]
    public void A_ledger_that_is_lost_is_an_alarm_and_no_empty_one_is_begun(bool emptied, string why)
    {
        Assert.Equal(0, Morning().ExitCode);
        var elsewhere = Path.Combine(_home.Path, "elsewhere.db");
        File.Move(_site.LedgerFile, elsewhere);
        if (emptied)
        {
            File.WriteAllBytes(_site.LedgerFile, []);
        }

        foreach (var words in new[] { "morning --date 2026-06-10", "log note C1 --note x", "ingest " + ExampleSite.Weather, "backup", "weather" })
        {
            var result = RunningProgram.Run([.. words.Split(' '), "--home", _home.Path]);
            Assert.True(result.ExitCode == 1 && result.Error.Contains(why, StringComparison.Ordinal), $"{words}: {result}");
        }

        Assert.Equal(emptied, File.Exists(_site.LedgerFile));
        var doctor = RunningProgram.Run("doctor", "--home", _home.Path, "--quiet");
        Assert.Equal(1, doctor.ExitCode);
        Assert.Contains(why, doctor.Output, StringComparison.Ordinal);
        using (var service = new RunningService(new ProgramStart("serve", "--home", _home.Path, "--set", "PollSeconds=1")))
        {
            MailServer.WaitFor("what the service says", () => service.HasEnded || service.Said.Contains(why, StringComparison.Ordinal));
            Assert.Equal(0, service.Stop());
        }

        Assert.Equal(emptied, File.Exists(_site.LedgerFile));
        File.Move(elsewhere, _site.LedgerFile, overwrite: true);
        Assert.Equal(0, Morning().ExitCode);
        Assert.True(File.Exists(Path.Combine(_site.ReportFolder(SecondDay.Date), "report.txt")));
        Tried.Held(7, "a ledger that was lost", 1);
    }

    [Fact]
    [Trait("Promise", "8")]
    public void Stations_that_an_edit_no_longer_has_are_named()
    {
        File.WriteAllLines(_site.StationsFile, File.ReadAllLines(_site.StationsFile).SkipLast(1));
        Assert.Equal(0, Morning().ExitCode);
        Assert.Contains("No longer in it: C2/", Sheet(), StringComparison.Ordinal);
        Tried.Held(8, "stations.csv saved by half", 1);
    }

    [Fact]
    [Trait("Promise", "4")]
    public void A_file_whose_name_is_not_in_utf_8_is_named_and_left()
    {
        Tool.Do("/bin/sh", "-c", $"printf x > '{_site.Inbox}'/\"$(printf 'course-\\377.csv')\"");
        Assert.Equal(0, Morning().ExitCode);
        Assert.Contains("its name is not in UTF-8", Sheet(), StringComparison.Ordinal);
        Tool.Do("/bin/sh", "-c", $"test -f '{_site.Inbox}'/course-?.csv && rm '{_site.Inbox}'/course-?.csv");
        Tried.Held(4, "a name that is not in UTF-8", 1);
    }

    [Fact]
    [Trait("Promise", "9")]
    public void A_site_that_is_taken_away_and_a_disk_for_copies_that_is_not_there_are_told()
    {
        var doctor = RunningProgram.Run("doctor", "--home", _home.Path, "--quiet", "--set", "BackupFolder=/nowhere");
        Assert.Equal(1, doctor.ExitCode);
        Assert.Contains("/nowhere, for the copies of backups (BackupFolder), is not there", doctor.Output, StringComparison.Ordinal);

        var away = Path.Combine(_home.Path, "away");
        using var service = new RunningService(new ProgramStart("serve", "--home", _home.Path, "--set", "PollSeconds=1"));
        MailServer.WaitFor("the service", () => service.HasEnded || service.Said.Contains("work begins at", StringComparison.Ordinal));
        Directory.Move(_site.Path, away);
        MailServer.WaitFor("what the service says", () => service.HasEnded || service.Said.Contains($"{_site.Name}: its folder is gone", StringComparison.Ordinal));
        Directory.Move(away, _site.Path);
        MailServer.WaitFor("what the service says", () => service.HasEnded || service.Said.Contains($"{_site.Name}: its folder is there again", StringComparison.Ordinal));
        Assert.True(service.Stop() == 0, service.Said);
        Tried.Held(9, "a site that was taken away", 1);
    }

    private ProgramResult Morning() => RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-09");

    private string Sheet() => string.Join(' ', File.ReadAllText(Path.Combine(_site.ReportFolder(SecondDay.Date), "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
