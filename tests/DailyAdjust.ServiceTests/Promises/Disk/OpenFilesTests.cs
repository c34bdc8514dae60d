using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>A running service that may open no more files: it holds, and goes on when it may again.</summary>
[Trait("Promise", "3")]
public sealed class OpenFilesTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.Home();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Too_many_open_files()
    {
        Tool.Need("prlimit");
        var site = SecondDay.Site(_home);
        using (var service = new HeldBack(_home, same => same, [], SecondDay.Clock))
        {
            // Everything has been done once, as after any start; then the limit falls on what is open anyway.
            service.WaitFor("the first sheet", () => service.IsWritten(SecondDay.Date));
            Thread.Sleep(1500);
            Limit(service.ProcessId, Directory.GetFiles($"/proc/{service.ProcessId.ToString(CultureInfo.InvariantCulture)}/fd").Length / 2);
            SecondDay.Example.PutFiles(site.Inbox);
            service.AssertHeld("Too many files are open");
            Limit(service.ProcessId, 4096);
            service.WaitFor("the inbox to be taken", () => Directory.GetFiles(site.Inbox).Length == 0);
            Assert.Equal(0, service.Stop());
            service.AssertUntouched();
        }

        var next = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-10", "--no-mail");
        Assert.True(next.ExitCode == 0, next.ToString());

        // The next sheet is another issue of the same day where what came changes a line of it.
        var reports = Directory.GetFiles(site.Reports, "report-full.txt", SearchOption.AllDirectories).Select(f => string.Join(' ', File.ReadAllText(f).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Single(reports, report => report.Contains("Too many files are open at once", StringComparison.Ordinal));
        Tried.Held(3, "too many open files", 1);
    }

    private static void Limit(int process, int files) => Tool.Do("prlimit", "--pid", process.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"--nofile={files}:4096"));
}
