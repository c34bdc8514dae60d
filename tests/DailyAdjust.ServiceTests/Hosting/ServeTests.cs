using System.Diagnostics;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Hosting;

/// <summary>`serve` as a process: it polls, issues, holds on, and stops cleanly.</summary>
public sealed class ServeTests : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public ServeTests()
    {
        // A report hour that has passed on any clock: today's sheet is due as soon as the service looks.
        _site = ExampleSite.PutInto(_home);
        File.WriteAllText(_site.SiteFile, File.ReadAllText(_site.SiteFile).Replace("at: \"05:00\"", "at: \"00:00\"", StringComparison.Ordinal));
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_issues_what_is_due_takes_what_comes_and_stops_with_0()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        using var service = Serve();
        WaitFor("a sheet", () => Reports().Length > 0);
        File.Copy(ExampleSite.Weather, Path.Combine(_site.Inbox, "yard-hourly.csv"));
        File.WriteAllText(Path.Combine(_site.Inbox, "holiday.csv"), "a,b\n1,2\n");
        WaitFor("the weather to be taken", () => File.Exists(Path.Combine(_site.Taken, "yard-hourly.csv")));
        WaitFor("the other file to be refused", () => File.Exists(Path.Combine(_site.Refused, "holiday.csv.why.txt")));
        Assert.Equal(0, Stop(service));
        Assert.Contains("as-set", File.ReadAllText(Assert.Single(Reports())), StringComparison.Ordinal);
        Assert.Contains("\"@mt\":\"Stopped\"", Log(), StringComparison.Ordinal);
    }

    [Fact]
    public void Started_again_it_does_not_issue_the_same_morning_again()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        using (var first = Serve())
        {
            WaitFor("a sheet", () => Reports().Length > 0);
            Assert.Equal(0, Stop(first));
        }

        var before = File.GetLastWriteTimeUtc(Assert.Single(Reports()));
        using var second = Serve();
        WaitFor("the second look", () => Log().Split("watching").Length > 2);
        Thread.Sleep(2500);
        Assert.Equal(0, Stop(second));
        Assert.Equal(before, File.GetLastWriteTimeUtc(Assert.Single(Reports())));
    }

    [Fact]
    public void It_keeps_the_page_over_all_sites()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        using var service = Serve();
        WaitFor("the page", () => File.Exists(_home.Home.IndexFile) && File.ReadAllText(_home.Home.IndexFile).Contains("No sound advice today", StringComparison.Ordinal));
        Assert.Equal(0, Stop(service));
        var day = Path.GetFileName(Path.GetDirectoryName(Assert.Single(Reports())));
        Assert.Contains($"<a href=\"sites/tamarack/reports/{day}/report.html\">Sheet {day}/1</a>", File.ReadAllText(_home.Home.IndexFile), StringComparison.Ordinal);
    }

    [Fact]
    public void A_site_that_cannot_be_read_does_not_keep_the_other_from_its_sheet()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "The signal is sent by kill.");
        var broken = _home.EmptySite("a-broken-one");
        File.WriteAllText(broken.SiteFile, "site: [");
        var damaged = _home.EmptySite("b-damaged");
        File.Copy(_site.SiteFile, damaged.SiteFile);
        File.Copy(_site.StationsFile, damaged.StationsFile);
        File.WriteAllText(damaged.LedgerFile, "this is no ledger, and it is long enough to be looked at as if it were one");
        using var service = Serve();
        WaitFor("a sheet", () => Reports().Length > 0);
        Assert.Equal(0, Stop(service));
        Assert.Contains("a-broken-one", Log(), StringComparison.Ordinal);
        Assert.Contains("b-damaged", Log(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_home_that_cannot_be_made_ends_with_1()
    {
        var file = Path.Combine(_home.Path, "a-file");
        File.WriteAllText(file, "");
        var result = RunningProgram.Run("serve", "--home", Path.Combine(file, "home"));
        Assert.Equal(1, result.ExitCode);
        Assert.NotEmpty(result.Error);
    }

    [Fact]
    public void Wrong_settings_end_with_2_before_anything_is_done()
    {
        var result = RunningProgram.Run("serve", "--home", _home.Path, "--set", "PollSeconds=0");
        Assert.Equal(2, result.ExitCode);
        Assert.False(File.Exists(_site.LedgerFile));
    }

    private static void WaitFor(string what, Func<bool> holds)
    {
        var waited = Stopwatch.StartNew();
        while (!holds())
        {
            if (waited.Elapsed > Patience)
            {
                Assert.Fail($"Waited in vain for {what}.");
            }

            Thread.Sleep(100);
        }
    }

    private static int Stop(Process service)
    {
        using (var kill = Process.Start("kill", ["-TERM", service.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]))
        {
            kill.WaitForExit();
        }

        Assert.True(service.WaitForExit(Patience), "The service did not stop.");
        return service.ExitCode;
    }

    private Process Serve()
    {
        var process = RunningProgram.Start(new ProgramStart("serve", "--home", _home.Path, "--set", "PollSeconds=1"));
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        process.BeginOutputReadLine();
        return process;
    }

    private string[] Reports() =>
        Directory.Exists(_site.Reports) ? Directory.GetFiles(_site.Reports, "advice.csv", SearchOption.AllDirectories) : [];

    private string Log()
    {
        if (!Directory.Exists(_home.Home.LogsFolder))
        {
            return "";
        }

        return string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Select(file =>
        {
            using var stream = new FileStream(file, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }));
    }
}
