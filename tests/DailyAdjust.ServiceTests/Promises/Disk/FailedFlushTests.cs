using System.Globalization;
using DailyAdjust.ServiceTests.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>A flush that fails: nothing is said to be done, nothing more is written, and the program ends with another code than 0.</summary>
[Trait("Promise", "2")]
public sealed class FailedFlushTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.HomeWithInbox();

    public FailedFlushTests() => Tool.Need("strace");

    private string Trace => Path.Combine(_home.Path, "trace");

    public void Dispose() => _home.Dispose();

    public static TheoryData<int> Flushes() => [.. Tried.Times(0, 1) == 1 ? Enumerable.Range(1, 30) : [1, 4, 13]];

    [Theory]
    [MemberData(nameof(Flushes))]
    public void A_morning_says_so_and_issues_nothing_that_is_not_there(int number)
    {
        var result = RunningProgram.Run(new ProgramStart("morning", "--home", _home.Path, "--date", "2026-06-09") { Under = Strace(number) });
        if (!WasFelt(out var path))
        {
            Assert.True(Tried.Times(0, 1) == 1, "of the few that are always tried, each is felt");
            Assert.True(result.ExitCode == 0, result.ToString());
            return;
        }

        Assert.True(result.ExitCode == 1, $"the flush of {path} failed: {result}");
        Assert.Contains("The disk failed", result.Error, StringComparison.Ordinal);
        if (!path.Contains("/summaries", StringComparison.Ordinal) && !path.StartsWith(_home.Path + "/.index", StringComparison.Ordinal) && !string.Equals(path, _home.Path, StringComparison.Ordinal))
        {
            Assert.False(result.Output.Contains("sheet 2026-06-09", StringComparison.Ordinal), $"the flush of {path} failed: {result}");
        }

        AssertNothingMoreWasWritten();
        SiteState.AssertWhole(SecondDay.Site(_home));
        SiteState.AssertEachOnce(SecondDay.Site(_home), SecondDay.Example.Inbox);
        var again = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-09");
        Assert.True(again.ExitCode == 0, again.ToString());
        SiteState.AssertNoLeftovers(_home);
        Tried.Held(2, "morning with a failing flush", 1);
    }

    [Theory]
    [MemberData(nameof(Flushes))]
    public void The_service_stops_by_itself_and_goes_on_at_its_next_start(int number)
    {
        using (var service = Serve(Strace(number)))
        {
            MailServer.WaitFor("the end of the service", () => service.HasEnded || IsDone());
            if (!WasFelt(out var path))
            {
                return;
            }

            MailServer.WaitFor("the end of the service", () => service.HasEnded);
            Assert.True(service.Stop() == 1, $"exit {service.Stop()} after the flush of {path} failed");
            Assert.Contains("the disk failed, the service stops", service.Said, StringComparison.Ordinal);
        }

        AssertNothingMoreWasWritten();
        SiteState.AssertWhole(SecondDay.Site(_home));
        SiteState.AssertEachOnce(SecondDay.Site(_home), SecondDay.Example.Inbox);
        using var again = Serve([]);
        MailServer.WaitFor("the sheet", () => again.HasEnded || (again.Said.Contains("work begins at", StringComparison.Ordinal) && IsDone()));
        Assert.Equal(0, again.Stop());
        SiteState.AssertWhole(SecondDay.Site(_home));
        Tried.Held(2, "serve with a failing flush", 1);
    }

    private RunningService Serve(IReadOnlyList<string> under) =>
        new(new ProgramStart("serve", "--home", _home.Path, "--set", "PollSeconds=1") { Under = under, Variables = DiskSteps.Variables(_home.Path, SecondDay.Clock) });

    private bool IsDone() => Directory.GetFiles(SecondDay.Site(_home).Inbox).Length == 0
        && SiteState.Number(SecondDay.Site(_home).LedgerFile, "SELECT count(*) FROM morning WHERE day = '2026-06-09' AND step = 'written'") == 1;

    /// <summary>Whether a flush failed of which anybody hears: of a folder in which it made its own log, SQLite passes over it.</summary>
    private bool WasFelt(out string path)
    {
        path = File.ReadLines(Trace).FirstOrDefault(line => line.Contains("(INJECTED)", StringComparison.Ordinal)) is { } line ? line.Split('<', '>')[1] : "";
        var ofLedger = path.Contains("/ledger.db", StringComparison.Ordinal);

        // What is tidied up when the ledger is closed rests on nothing new.
        var atClosing = ofLedger && File.ReadLines(Trace).SkipWhile(l => !l.Contains("/summaries/", StringComparison.Ordinal)).Any();
        return path.Length > 0 && !atClosing && !string.Equals(path, SecondDay.Site(_home).Path, StringComparison.Ordinal);
    }

    private void AssertNothingMoreWasWritten()
    {
        var after = File.ReadLines(Trace).SkipWhile(line => !line.Contains("(INJECTED)", StringComparison.Ordinal)).Skip(1)
            .Where(line => line.Contains(_home.Path + "/", StringComparison.Ordinal) && !line.Contains("/logs/", StringComparison.Ordinal) && !line.Contains("-shm>", StringComparison.Ordinal));
        Assert.Empty(after);
    }

    /// <summary>The flush of this number fails, of each thread; a morning's work is one thread's.</summary>
    private string[] Strace(int number) =>
    [
        "strace", "-f", "-y", "-o", Trace, "-e", "trace=pwrite64,write,rename,fsync,fdatasync",
        "-e", string.Create(CultureInfo.InvariantCulture, $"inject=fsync:error=EIO:when={number}"),
    ];
}
