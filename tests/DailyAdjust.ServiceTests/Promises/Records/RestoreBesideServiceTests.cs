using DailyAdjust.Service.Home;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>`restore` while somebody else works with the records, and after the service was killed.</summary>
[Trait("Promise", "7")]
public sealed class RestoreBesideServiceTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly string _backup;

    public RestoreBesideServiceTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        _site = ExampleSite.TakenIn(_home);
        Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
        _backup = Assert.Single(Directory.GetFiles(_site.Backups));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Under_a_running_service_it_is_refused_with_who_runs_and_what_to_do_and_after_a_stop_it_works()
    {
        using (var service = new ServiceOn(_home, "BackupAt=never"))
        {
            ServiceOn.WaitFor("the first look", () => service.Said.Contains("work begins at", StringComparison.Ordinal));
            var refused = Restore();
            Assert.Equal(1, refused.ExitCode);
            Assert.Contains(FormattableString.Invariant($"process {service.Id}, dailyadjust serve"), refused.Error, StringComparison.Ordinal);
            Assert.Contains("Stop it", refused.Error, StringComparison.Ordinal);
            Assert.False(Directory.Exists(_site.SetAside));
            Assert.Equal(0, service.Stop());
        }

        Assert.Equal(0, Restore().ExitCode);
        Again();
    }

    [Fact]
    public void After_a_kill_with_steps_in_the_log_alone_it_works_at_once_and_the_log_goes_along()
    {
        for (var time = 0; time < Tried.Times(1, 20); time++)
        {
            using (var service = new ServiceOn(_home, "BackupAt=never"))
            {
                // A reader keeps the log from being emptied, so that the kill leaves one.
                using var reader = Reader();
                var note = $"2026-06-10 10:{time:00}";
                File.WriteAllText(Path.Combine(_site.Inbox, $"note-{time}.csv"), $"time,kind,where,value,unit,until,by,note\n{note},note,site,,,,,before the kill\n");
                ServiceOn.WaitFor("the file to be taken", () => Directory.GetFiles(_site.Inbox, "note-*").Length == 0);
                service.Kill();
            }

            Assert.True(new FileInfo(_site.LedgerFile + "-wal").Length > 0, "the kill left no log");
            var restored = Restore();
            Assert.True(restored.ExitCode == 0, restored.ToString());
            Assert.Equal(FormattableString.Invariant($"{time + 1}"), RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM logbook WHERE body LIKE '%before the kill%'"));
            Assert.True(RawLedger.IsWhole(_site.LedgerFile));
            Assert.False(File.Exists(_site.LedgerFile + "-wal"));
            Thread.Sleep(1100);
        }

        Again();
        Tried.Held(7, "restores after a killed service", Tried.Times(1, 20));
    }

    private SqliteConnection Reader()
    {
        var reader = new SqliteConnection($"Data Source={_site.LedgerFile};Pooling=False;Mode=ReadOnly");
        reader.Open();
        using var command = reader.CreateCommand();
        command.CommandText = "BEGIN; SELECT count(*) FROM input;";
        command.ExecuteScalar();
        return reader;
    }

    private void Again()
    {
        using var service = new ServiceOn(_home, "BackupAt=never");
        ServiceOn.WaitFor("a look", () => service.Said.Contains("work begins at", StringComparison.Ordinal));
        Assert.Equal(0, service.Stop());
        Assert.DoesNotContain("held back", service.Said, StringComparison.Ordinal);
    }

    private ProgramResult Restore() => RunningProgram.Run("restore", _backup, "--home", _home.Path);
}
