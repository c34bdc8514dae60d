using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>`restore`: after a damaged disk, after a mistake, on a new computer.</summary>
[Trait("Promise", "7")]
public sealed class RestoreTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly string _backup;
    private readonly IReadOnlyList<string> _before;

    public RestoreTests()
    {
        _site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-09");
        _before = RawLedger.Rows(_site.LedgerFile);
        Run("backup");
        _backup = Assert.Single(Directory.GetFiles(_site.Backups));

        // What comes after it: an entry that was typed, a file in the inbox, a sheet.
        Run("log", "note", "typed after the backup", "--date", "2026-06-09");
        File.WriteAllText(Path.Combine(_site.Inbox, "seen.csv"), "time,kind,where,value,unit,until,by,note\n2026-06-10 04:30,note,site,,,,,dropped after the backup\n");
        File.SetLastWriteTimeUtc(Path.Combine(_site.Inbox, "seen.csv"), new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        Run("morning", "--date", "2026-06-10");
        Assert.True(File.Exists(Path.Combine(_site.Taken, "seen.csv")));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void What_came_after_the_backup_is_brought_along_and_nothing_is_lost()
    {
        var rows = RawLedger.Rows(_site.LedgerFile);
        var printed = Printed();
        var old = File.ReadAllBytes(_site.LedgerFile);
        var output = Run("restore", _backup);
        Assert.Contains("Brought along, for it came after the backup: 1 file (seen.csv); 2 logbook entries; 1 sheet (2026-06-10/1).", output, StringComparison.Ordinal);
        Assert.Equal(rows, RawLedger.Rows(_site.LedgerFile));
        Assert.Equal(printed, Printed());
        Assert.Equal(old, File.ReadAllBytes(Path.Combine(Aside(), "ledger.db")));
        Assert.Contains(Aside(), output, StringComparison.Ordinal);
        Assert.Equal("ledger.db", Path.GetFileName(Assert.Single(Directory.GetFiles(_site.Path, "ledger.db*"))));
        Tried.Held(7, "restores that bring along what came after", 1);
    }

    [Fact]
    public void What_the_next_sheet_has_to_say_is_brought_along()
    {
        RawLedger.Scalar(_site.LedgerFile, "INSERT INTO notice (text) VALUES ('The work on this site was held back.')");
        Run("restore", _backup);
        Assert.Equal("The work on this site was held back.", RawLedger.Scalar(_site.LedgerFile, "SELECT text FROM notice"));
    }

    [Fact]
    public void As_it_was_it_is_the_backup_and_what_is_left_out_is_named()
    {
        var output = Run("restore", _backup, "--as-it-was");
        Assert.Contains("Left out, for it came after the backup: 1 file (seen.csv); 2 logbook entries; 1 sheet (2026-06-10/1).", output, StringComparison.Ordinal);
        Assert.Contains("drop into the inbox what is to count: seen.csv", output, StringComparison.Ordinal);
        Assert.Contains("Sheets that people have and the records do not know: 2026-06-10/1.", output, StringComparison.Ordinal);
        Assert.Equal(_before.Where(r => !r.StartsWith("morning", StringComparison.Ordinal)), RawLedger.Rows(_site.LedgerFile).Where(r => !r.StartsWith("morning", StringComparison.Ordinal)));
        Assert.True(File.Exists(Path.Combine(_site.Taken, "seen.csv")));

        // The number of a sheet that people have is not given again.
        Run("morning", "--date", "2026-06-10");
        Assert.Equal("2", RawLedger.Scalar(_site.LedgerFile, "SELECT issue FROM morning WHERE day = '2026-06-10' AND step = 'written'"));

        // And back: the records that were set aside are a backup like any other.
        Run("restore", Path.Combine(Aside(), "ledger.db"), "--as-it-was");
        Assert.Equal("1", RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM logbook WHERE body LIKE '%typed after%'"));
        Tried.Held(7, "restores as it was, and back", 2);
    }

    [Fact]
    public void Over_a_damaged_ledger_files_that_the_backup_does_not_know_are_put_back_and_taken_again()
    {
        RawLedger.Damage(_site.LedgerFile, "logbook");
        Assert.Equal(1, RunningProgram.Run("log", "note", "x", "--home", _home.Path).ExitCode);
        var output = Run("restore", _backup);
        Assert.Contains("cannot be read", output, StringComparison.Ordinal);
        Assert.Contains("Put back into the inbox, for the backup does not know them: seen.csv.", output, StringComparison.Ordinal);
        File.SetLastWriteTimeUtc(Path.Combine(_site.Inbox, "seen.csv"), new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        Run("morning", "--date", "2026-06-11");
        Assert.Equal("1", RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM logbook WHERE body LIKE '%dropped after%'"));
        Assert.True(RawLedger.IsWhole(_site.LedgerFile));
        Tried.Held(7, "restores over a damaged ledger", 1);
    }

    [Fact]
    public void On_a_new_computer_the_backup_is_all_that_is_needed()
    {
        using var computer = new TestHome();
        var result = RunningProgram.Run("restore", _backup, "--home", computer.Path, "--site", "course");
        Assert.Contains("There were no records in ", result.Output, StringComparison.Ordinal);
        Assert.True(result.ExitCode == 0, result.ToString());
        var site = computer.Home.Site("course");
        Assert.Equal(File.ReadAllBytes(_site.SiteFile), File.ReadAllBytes(site.SiteFile));
        Assert.Equal(_before, RawLedger.Rows(site.LedgerFile));
        Assert.Equal(0, RunningProgram.Run("morning", "--date", "2026-06-10", "--home", computer.Path).ExitCode);
    }

    [Fact]
    public void A_file_that_is_no_backup_or_another_courses_is_refused_and_nothing_changes()
    {
        var before = File.ReadAllBytes(_site.LedgerFile);
        var damaged = Path.Combine(_home.Path, "damaged.db");
        File.Copy(_backup, damaged);
        RawLedger.Damage(damaged, "file_chunk");
        Refused("is damaged", 1, damaged);
        File.WriteAllText(damaged, "no backup at all, only a text that somebody gave that name, and long enough to be looked at as if");
        Refused($"{damaged} is damaged, or no backup", 1, damaged);
        Refused("There is no file", 1, Path.Combine(_home.Path, "nowhere.db"));
        File.WriteAllText(_site.SiteFile, File.ReadAllText(_site.SiteFile).Replace("name: ", "name: Not ", StringComparison.Ordinal));
        Refused("is a backup of", 2, _backup);
        Assert.Equal(before, File.ReadAllBytes(_site.LedgerFile));
        Assert.False(Directory.Exists(_site.SetAside));
    }

    private void Refused(string why, int code, string file)
    {
        var result = RunningProgram.Run("restore", file, "--home", _home.Path);
        Assert.Equal(code, result.ExitCode);
        Assert.Contains(why, result.Error, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(_site.Path, "*.restoring*"));
    }

    private string Aside() => Directory.GetDirectories(_site.SetAside).Order(StringComparer.Ordinal).First();

    private (string, string) Printed() => (Run("balance", "--format", "csv"), Run("advice", "--date", "2026-06-10", "--format", "csv"));

    private string Run(params string[] arguments)
    {
        var result = RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
        Assert.True(result.ExitCode == 0, result.ToString());
        return result.Output;
    }
}
