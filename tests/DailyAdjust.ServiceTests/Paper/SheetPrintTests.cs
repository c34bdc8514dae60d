using System.Diagnostics;
using System.Globalization;
using DailyAdjust.ServiceTests.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Paper;

/// <summary>report.pdf: there where a browser prints, and no matter to the sheet where none does.</summary>
public sealed class SheetPrintTests : IDisposable
{
    private const string Prints = "{ echo '%PDF-1.4'; echo '/CreationDate (D:20991231235959+00)'; cat \"$page\"; } > \"$pdf\"";

    private readonly PrintedHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_is_the_print_of_the_page_beside_it_dated_by_the_sheet()
    {
        var morning = _home.Morning(_home.Browser(Prints), "--date", "2026-06-10", "--pdf");
        Assert.True(morning is { ExitCode: 0, Error: "" }, morning.ToString());
        Assert.Equal("%PDF-1.4\n/CreationDate (D:20260610000000+00)\n" + File.ReadAllText(Path.Combine(_home.Folder, "report.html")), File.ReadAllText(_home.Print));
    }

    [Fact]
    public void Nothing_is_printed_that_was_not_asked_for()
    {
        Assert.Equal(0, _home.Morning(_home.Browser(Prints), "--date", "2026-06-10").ExitCode);
        Assert.False(File.Exists(_home.Print));
    }

    [Fact]
    public void The_next_issue_takes_the_print_of_the_one_before_away()
    {
        _home.Morning(_home.Browser(Prints), "--date", "2026-06-10", "--pdf");
        Assert.True(File.Exists(_home.Print));
        _home.Morning(_home.Browser(Prints), "--date", "2026-06-10");
        Assert.False(File.Exists(_home.Print));
    }

    [Fact]
    public void A_page_that_changes_while_it_is_printed_gets_no_print()
    {
        var page = Path.Combine(_home.Site.ReportFolder(new DateOnly(2026, 6, 10)), "report.html");
        var morning = _home.Morning(_home.Browser($"{Prints}; echo changed >> '{page}'"), "--date", "2026-06-10", "--pdf");
        Assert.Equal((0, "No report.pdf: the page changed while it was printed.\n"), (morning.ExitCode, morning.Error));
        Assert.EndsWith("changed\n", File.ReadAllText(page), StringComparison.Ordinal);
        Assert.False(File.Exists(_home.Print));
    }

    [Theory]
    [InlineData("echo 'no display' >&2; exit 3", "ended with code 3: no display")]
    [InlineData("echo hello", "left no PDF: hello")]
    [InlineData("echo 'an error page' > \"$pdf\"", "left no PDF")]
    [InlineData("sleep 300", "took longer than 2 s and was ended")]
    public void A_browser_that_fails_costs_a_line_and_nothing_else(string script, string said)
    {
        var morning = _home.Morning(_home.Browser(script), "--date", "2026-06-10", "--pdf");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains("No report.pdf: ", morning.Error, StringComparison.Ordinal);
        Assert.Contains(said, morning.Error, StringComparison.Ordinal);
        Assert.Contains(said, _home.Log, StringComparison.Ordinal);
        Assert.False(File.Exists(_home.Print));
        Assert.True(File.Exists(Path.Combine(_home.Folder, "report.html")));
    }

    [Fact]
    public void A_child_that_outlives_the_browser_is_ended_with_it_in_time()
    {
        var child = Path.Combine(_home.Home, "child.txt");
        var waited = Stopwatch.StartNew();
        var morning = _home.Morning(_home.Browser($"{Prints}; sleep 300 & echo $! > '{child}'"), "--date", "2026-06-10", "--pdf");
        Assert.InRange(waited.Elapsed.TotalSeconds, 2, 20);
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains("took longer than 2 s and was ended", morning.Error, StringComparison.Ordinal);
        AssertEnded(child);
    }

    [Fact]
    public void A_service_that_is_told_to_stop_does_not_wait_for_a_child_of_the_browser()
    {
        var child = Path.Combine(_home.Home, "child.txt");
        using var service = _home.Serve(_home.Browser($"sleep 300 & echo $! > '{child}'"), seconds: 120);
        MailServer.WaitFor("the child", () => File.Exists(child) && File.ReadAllText(child).EndsWith('\n'));
        var waited = Stopwatch.StartNew();
        Assert.Equal(0, service.Stop());
        Assert.InRange(waited.Elapsed.TotalSeconds, 0, 10);
        AssertEnded(child);
    }

    [Fact]
    public void Who_ends_the_command_ends_the_browser()
    {
        var begun = Path.Combine(_home.Home, "begun.txt");
        using var command = _home.StartMorning(_home.Browser($"echo $$ > '{begun}'; exec sleep 300"), 120, "--date", "2026-06-10", "--pdf");
        MailServer.WaitFor("the browser", () => File.Exists(begun) && File.ReadAllText(begun).EndsWith('\n'));
        using (var interrupt = Process.Start("kill", ["-INT", command.Id.ToString(CultureInfo.InvariantCulture)]))
        {
            interrupt.WaitForExit();
        }

        Assert.True(command.WaitForExit(TimeSpan.FromSeconds(10)));
        Assert.Equal(1, command.ExitCode);
        Assert.Contains("stopped while its page was printed; the sheet is there", command.StandardError.ReadToEnd(), StringComparison.Ordinal);
        AssertEnded(begun);
    }

    [Theory]
    [InlineData("never")]
    [InlineData("/nowhere/chromium")]
    public void Without_a_browser_it_says_so(string setting)
    {
        var morning = _home.Morning(setting, "--date", "2026-06-10", "--pdf");
        Assert.Equal(0, morning.ExitCode);
        Assert.Contains($"no browser that prints was found (setting Pdf: {setting})", morning.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_browser_is_told_no_secret_and_leaves_nothing_behind()
    {
        var told = Path.Combine(_home.Home, "told.txt");
        _home.Morning(_home.Browser($"{{ env; echo \"folder $PWD\"; }} > '{told}'; {Prints}"), "--date", "2026-06-10", "--pdf");
        var lines = File.ReadAllLines(told);
        Assert.Contains(lines, l => l.StartsWith("HOME=", StringComparison.Ordinal));
        Assert.DoesNotContain(lines, l => l.Contains("plain-4711", StringComparison.Ordinal) || l.StartsWith("DAILYADJUST_", StringComparison.Ordinal));
        Assert.False(Directory.Exists(lines.Single(l => l.StartsWith("folder ", StringComparison.Ordinal))["folder ".Length..]));
    }

    [Fact]
    public void The_service_prints_a_new_sheet_by_itself()
    {
        using var service = _home.Serve(_home.Browser(Prints));
        MailServer.WaitFor("the print", () => Directory.Exists(_home.Site.Reports) && Directory.GetFiles(_home.Site.Reports, "report.pdf", SearchOption.AllDirectories).Length > 0);
        Assert.Equal(0, service.Stop());
        Assert.EndsWith(File.ReadAllText(Path.Combine(_home.Folder, "report.html")), File.ReadAllText(_home.Print), StringComparison.Ordinal);
    }

    [Fact]
    public void A_service_whose_browser_fails_tries_each_sheet_once_and_goes_on()
    {
        var count = Path.Combine(_home.Home, "count.txt");
        using var service = _home.Serve(_home.Browser($"echo once >> '{count}'; exit 3"));
        MailServer.WaitFor("the failure", () => File.Exists(count) && _home.Log.Contains("ended with code 3", StringComparison.Ordinal));
        Thread.Sleep(TimeSpan.FromSeconds(3));
        Assert.Equal(0, service.Stop());
        Assert.Equal(["once"], File.ReadAllLines(count));
    }

    [Fact]
    public void A_service_that_is_told_to_stop_does_not_wait_for_a_browser()
    {
        var begun = Path.Combine(_home.Home, "begun.txt");
        using var service = _home.Serve(_home.Browser($"echo > '{begun}'; sleep 300"));
        MailServer.WaitFor("the browser", () => File.Exists(begun));
        var waited = Stopwatch.StartNew();
        Assert.Equal(0, service.Stop());
        Assert.InRange(waited.Elapsed.TotalSeconds, 0, 10);
    }

    [Fact]
    public void Chromium_gives_the_same_bytes_for_the_same_sheet()
    {
        Assert.SkipUnless(File.Exists("/usr/bin/chromium"), "needs chromium (Debian: apt-get install chromium)");
        using var other = new PrintedHome();
        foreach (var home in new[] { _home, other })
        {
            var morning = RunningProgram.Run(new ProgramStart("morning", "--date", "2026-06-10", "--pdf", "--home", home.Home) { Variables = new Dictionary<string, string>(StringComparer.Ordinal) { ["DAILYADJUST_PDF"] = "auto" } });
            Assert.True(morning is { ExitCode: 0, Error: "" }, morning.ToString());
        }

        var print = File.ReadAllBytes(_home.Print);
        Assert.InRange(print.Length, 20_000, 2_000_000);
        Assert.Equal(print, File.ReadAllBytes(other.Print));
    }

    /// <summary>By the number in a file; one that has ended and that nobody has waited for has ended too.</summary>
    private static void AssertEnded(string file)
    {
        var status = $"/proc/{File.ReadAllText(file).Trim()}/status";
        MailServer.WaitFor("its end", () => !File.Exists(status) || File.ReadAllText(status).Contains("State:\tZ", StringComparison.Ordinal));
    }
}
