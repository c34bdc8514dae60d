using System.Globalization;
using System.Text.RegularExpressions;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>Disks that are full, may only be read, or are closed to the service: it holds, harms nothing, says so, and goes on by itself.</summary>
[Trait("Promise", "3")]
public sealed class SickDiskTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.HomeWithInbox();

    public void Dispose() => _home.Dispose();

    public static TheoryData<int> FreeKilobytes()
    {
        // Of a few hundred that a morning needs: at some the ledger fails, at some the report's files do, at the last ones nothing.
        var free = new TheoryData<int>();
        for (var i = 0; i < Tried.Times(2, 40); i++)
        {
            free.Add(Tried.Times(0, 1) == 1 ? i * 8 : i * 120);
        }

        return free;
    }

    [Theory]
    [MemberData(nameof(FreeKilobytes))]
    public void A_full_disk(int kilobytes)
    {
        using var disk = new OwnDisk(_home.Path, "3m");
        disk.Fill(kilobytes * 1024L);
        using var service = new HeldBack(_home, disk.Seen, disk.Under, SecondDay.Clock);
        service.AssertHeld("No room on the disk");
        var isFixed = service.IsFixed(SecondDay.Date);
        disk.Free();
        if (isFixed)
        {
            // The report's files had no room: the sheet was fixed before, and the next one says what held it back.
            service.AssertRecoversWithTheSheetAsItWas();
            AssertNextSheetSays(disk, "No room on the disk");
        }
        else
        {
            service.AssertRecovers("No room on the disk");
        }

        Tried.Held(3, "a full disk", 1);
    }

    [Fact]
    public void A_disk_that_is_full_in_the_middle_of_the_report_files()
    {
        // The folder of the reports is a disk of its own: the ledger has room, and the old sheet stays as it is until the new one is whole.
        var site = SecondDay.Site(_home);
        var old = Directory.GetFiles(site.Reports, "*", SearchOption.AllDirectories).Sum(f => new FileInfo(f).Length);
        using var disk = new OwnDisk(site.Reports, string.Create(CultureInfo.InvariantCulture, $"{(old / 1024) + 70}k"));
        disk.Fill(30 * 1024);
        using var service = new HeldBack(_home, disk.Seen, disk.Under, SecondDay.Clock);
        service.AssertHeld("No room on the disk");
        Assert.False(service.IsWritten(SecondDay.Date));
        disk.Free();
        disk.Remount("size=4m");
        service.AssertRecoversWithTheSheetAsItWas();

        // That sheet was fixed before the disk was found full; the next one says it.
        AssertNextSheetSays(disk, "No room on the disk");
        Tried.Held(3, "a disk that is full in the middle of the report files", 1);
    }

    [Fact]
    public void A_disk_that_may_only_be_read()
    {
        using var disk = new OwnDisk(SecondDay.Site(_home).Path, "3m");
        disk.Remount("ro");
        using var service = new HeldBack(_home, disk.Seen, disk.Under, SecondDay.Clock);
        service.AssertHeld("No right to write or open");
        disk.Remount("rw");
        service.AssertRecovers("No right to write or open");
        Tried.Held(3, "a disk that may only be read", 1);
    }

    [Theory]
    [InlineData("ledger.db")]
    [InlineData("reports")]
    public void No_right_to_write(string what)
    {
        Tool.Need("setpriv");
        var path = Path.GetFullPath(Path.Combine(SecondDay.Site(_home).Path, what));
        Tool.Do("chmod", "a-w", path);
        using var service = new HeldBack(_home, same => same, Tool.WithoutPrivileges, SecondDay.Clock);
        try
        {
            service.AssertHeld("No right to write or open");
        }
        finally
        {
            Tool.Do("chmod", "u+w", path);
        }

        if (what is "reports")
        {
            // Its sheet was fixed before.
            service.WaitFor("the sheet", () => service.IsWritten(SecondDay.Date));
            Assert.Equal(0, service.Stop());
            service.AssertFilesAreAsIssued(SecondDay.Date);
        }
        else
        {
            service.AssertRecovers("No right to write or open");
        }

        Tried.Held(3, "no right to write", 1);
    }

    /// <summary>What came is known and the sheet comes in time; the files stay, which is said once on the log and on the sheet, and go when they may.</summary>
    [Fact]
    public void An_inbox_from_which_nothing_may_be_moved()
    {
        Tool.Need("setpriv");
        var site = SecondDay.Site(_home);
        Tool.Do("chmod", "a-w", site.Inbox);
        using var service = new HeldBack(_home, same => same, Tool.WithoutPrivileges, SecondDay.Clock);
        try
        {
            service.WaitFor("the sheet", () => service.IsWritten(SecondDay.Date));
            Thread.Sleep(3500);
        }
        finally
        {
            Tool.Do("chmod", "u+w", site.Inbox);
        }

        service.WaitFor("the inbox to be taken", () => Directory.GetFiles(site.Inbox).Length == 0);
        Assert.Equal(0, service.Stop());
        Assert.Equal(2, Regex.Count(service.Said, Regex.Escape("logbook.csv taken as logbook")) + Regex.Count(service.Said, Regex.Escape("logbook.csv is left in the inbox")));
        Assert.Contains("logbook.csv is left in the inbox", File.ReadAllText(Path.Combine(site.ReportFolder(SecondDay.Date), "report-full.txt")), StringComparison.Ordinal);
        service.AssertUntouched();
        Tried.Held(3, "no right to write", 1);
    }

    private void AssertNextSheetSays(OwnDisk disk, string why)
    {
        var result = RunningProgram.Run(new ProgramStart("morning", "--home", _home.Path, "--date", "2026-06-10") { Under = disk.Under });
        Assert.True(result.ExitCode == 0, result.ToString());
        var report = string.Join(' ', File.ReadAllText(Path.Combine(disk.Seen(SecondDay.Site(_home).ReportFolder(SecondDay.Date.AddDays(1))), "report-full.txt")).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("The work on this site was held back from 2026-06-09", report, StringComparison.Ordinal);
        Assert.Contains(why, report, StringComparison.Ordinal);
    }
}
