using DailyAdjust.Service.Backups;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>Backups: made by the service and by command, whole, kept by age.</summary>
[Trait("Promise", "7")]
public sealed class BackupTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public BackupTests() => _site = ExampleSite.TakenIn(_home);

    private BackupFiles Backups => new(_site.Backups, _site.Name);

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_service_makes_the_days_backup_once_and_copies_it_to_the_other_disk()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        var other = Directory.CreateDirectory(Path.Combine(_home.Path, "other-disk")).FullName;
        using (var service = new ServiceOn(_home, $"BackupFolder={other}", "BackupAt=00:00"))
        {
            ServiceOn.WaitFor("the copy", () => Directory.EnumerateFiles(other, "*.db", SearchOption.AllDirectories).Any());
            Thread.Sleep(2500);
            Assert.Equal(0, service.Stop());
        }

        using (var again = new ServiceOn(_home, $"BackupFolder={other}", "BackupAt=00:00"))
        {
            ServiceOn.WaitFor("the first looks", () => again.Said.Contains("work begins at", StringComparison.Ordinal));
            Thread.Sleep(2500);
            Assert.Equal(0, again.Stop());
        }

        var backup = Assert.Single(Directory.GetFiles(_site.Backups));
        Assert.True(RawLedger.IsWhole(backup));
        var copy = Path.Combine(other, _site.Name, Path.GetFileName(backup));
        Assert.Equal(File.ReadAllBytes(backup), File.ReadAllBytes(copy));
        Tried.Held(7, "daily backups made once", 1);
    }

    [Fact]
    public void Backups_beside_a_service_that_takes_files_are_whole_and_one_of_them_goes_back()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        var times = Tried.Times(3, 60);
        using (var service = new ServiceOn(_home, "BackupAt=never"))
        {
            for (var i = 0; i < times; i++)
            {
                Drop($"note-{i}.csv", $"2026-06-10 10:{i % 60:00}");
                var result = RunningProgram.Run("backup", _site.Name, "--home", _home.Path);
                Assert.True(result.ExitCode == 0, result.ToString());
                Assert.Contains("checked", result.Output, StringComparison.Ordinal);
            }

            ServiceOn.WaitFor("the files to be taken", () => Directory.GetFiles(_site.Inbox, "note-*").Length == 0);
            Assert.Equal(0, service.Stop());
        }

        var all = Backups.All();
        Assert.Equal(times, all.Count);
        Assert.All(all, b => Assert.True(RawLedger.IsWhole(b.Path), b.Path));
        Assert.Equal(0, RunningProgram.Run("restore", all[0].Path, "--home", _home.Path).ExitCode);
        Assert.Equal(times.ToString(System.Globalization.CultureInfo.InvariantCulture), RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM logbook WHERE body LIKE '%taken beside%'"));
        Tried.Held(7, "backups beside the running service", times);
    }

    [Fact]
    public void They_are_kept_by_age_and_the_newest_three_in_any_case()
    {
        Directory.CreateDirectory(_site.Backups);
        foreach (var month in Enumerable.Range(1, 5))
        {
            File.WriteAllText(Path.Combine(_site.Backups, FormattableString.Invariant($"{_site.Name}-2020-0{month}-01T120000Z.db")), "old");
        }

        File.WriteAllText(Path.Combine(_site.Backups, "before-tables-2-at-input-7.db"), "kept by hand");
        File.WriteAllText(Path.Combine(_site.Backups, "somebody-elses-2020-01-01T120000Z.db"), "not ours");
        Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
        Assert.Equal(
            ["2020-04-01", "2020-05-01"],
            Backups.All().SkipLast(1).Select(b => b.MadeAt.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)));
        Assert.Equal(5, Directory.GetFiles(_site.Backups).Length);
    }

    [Fact]
    public void One_course_that_cannot_be_backed_up_keeps_no_other_from_it_and_one_without_records_is_no_failure()
    {
        var broken = _home.EmptySite("a-broken-one");
        File.Copy(_site.SiteFile, broken.SiteFile);
        var fresh = _home.EmptySite("fresh");
        File.Copy(_site.SiteFile, fresh.SiteFile);
        Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
        File.WriteAllText(broken.LedgerFile, "this is no ledger, and it is long enough to be looked at as if it were one, which takes a hundred bytes");
        var result = RunningProgram.Run("backup", "--home", _home.Path);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("a-broken-one: failed", result.Error, StringComparison.Ordinal);
        Assert.Contains("fresh: nothing has been taken in yet", result.Output, StringComparison.Ordinal);
        Assert.Equal(2, Backups.All().Count);
        using var empty = new TestHome();
        Assert.Equal(0, RunningProgram.Run("backup", "--home", empty.Path).ExitCode);
    }

    [Fact]
    public void A_damaged_ledger_gives_no_backup_and_costs_no_older_one()
    {
        Directory.CreateDirectory(_site.Backups);
        var old = Path.Combine(_site.Backups, $"{_site.Name}-2020-01-01T120000Z.db");
        File.WriteAllText(old, "old");
        RawLedger.Damage(_site.LedgerFile, "file_chunk");
        var result = RunningProgram.Run("backup", "--home", _home.Path);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("damaged", result.Error, StringComparison.Ordinal);
        Assert.Equal([old], Directory.GetFiles(_site.Backups));
    }

    [Fact]
    public void A_disk_for_copies_that_is_not_there_is_told_and_the_backup_is_made()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        var gone = Path.Combine(_home.Path, "unplugged");
        using var service = new ServiceOn(_home, $"BackupFolder={gone}", "BackupAt=00:00");
        ServiceOn.WaitFor("the alarm", () => service.Said.Contains("Is its disk or share connected?", StringComparison.Ordinal));
        Assert.Equal(0, service.Stop());
        Assert.False(Directory.Exists(gone));
        Assert.Single(Backups.All());
    }

    [Fact]
    public void After_four_days_with_a_sheet_and_without_a_backup_doctor_says_so()
    {
        for (var day = 9; day <= 12; day++)
        {
            Assert.DoesNotContain("There is no backup of the records", Doctor(), StringComparison.Ordinal);
            Assert.Equal(0, RunningProgram.Run("morning", "--date", FormattableString.Invariant($"2026-06-{day:00}"), "--home", _home.Path).ExitCode);
        }

        Assert.Contains("There is no backup of the records", Doctor(), StringComparison.Ordinal);
        Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
        Assert.DoesNotContain("There is no backup of the records", Doctor(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("2026-06-10 11:59", "2026-06-09 12:00", false)]
    [InlineData("2026-06-10 12:00", "2026-06-09 12:00", true)]
    [InlineData("2026-06-10 12:00", "2026-06-09 11:59", true)]
    [InlineData("2026-06-10 11:59", "2026-06-09 11:59", true)]
    [InlineData("2026-06-10 23:00", "2026-06-10 12:01", false)]
    [InlineData("2026-06-10 12:30", "2027-06-10 12:00", true)]
    public void One_is_due_from_its_hour_on_until_it_is_there(string now, string newest, bool isDue)
    {
        // All UTC; a file of the future is of a clock that was wrong, and counts for nothing.
        var made = DateTimeOffset.Parse(newest + "Z", System.Globalization.CultureInfo.InvariantCulture);
        Directory.CreateDirectory(_site.Backups);
        File.WriteAllText(Backups.PathAt(made), "");
        var asked = DateTimeOffset.Parse(now + "Z", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(isDue, Backups.IsDue(new(TimeZoneInfo.Utc), new TimeOnly(12, 0), asked));
    }

    private string Doctor() => RunningProgram.Run("doctor", "--home", _home.Path).Output;

    private void Drop(string name, string time)
    {
        var hidden = Path.Combine(_site.Inbox, "." + name);
        File.WriteAllText(hidden, $"time,kind,where,value,unit,until,by,note\n{time},note,site,,,,,taken beside a backup {name}\n");
        File.SetLastWriteTimeUtc(hidden, new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc));
        File.Move(hidden, Path.Combine(_site.Inbox, name));
    }
}
