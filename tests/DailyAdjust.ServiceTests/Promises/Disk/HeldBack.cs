using System.Globalization;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.ServiceTests.Mail;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>`serve` on the second day, on a disk that does not let it work: what must be so meanwhile, and when the disk is well again.</summary>
internal sealed class HeldBack : IDisposable
{
    private readonly SiteFolder _site;
    private readonly string _oldSheet;
    private readonly RunningService _service;

    /// <param name="home">As the service sees it.</param>
    /// <param name="seen">A path as this process sees it.</param>
    /// <param name="under">What it is started under.</param>
    /// <param name="clock">What its clock says when it begins.</param>
    public HeldBack(TestHome home, Func<string, string> seen, IReadOnlyList<string> under, DateTimeOffset clock)
    {
        var site = SecondDay.Site(home);
        _site = new(site.Name, seen(site.Path));
        Logs = seen(home.Home.LogsFolder);
        _oldSheet = OldSheet();
        _service = new(new ProgramStart("serve", "--home", home.Path, "--set", "PollSeconds=1") { Under = under, Variables = DiskSteps.Variables(home.Path, clock) });
    }

    private string Logs { get; }

    public int ProcessId => _service.ProcessId;

    public string Said => _service.Said;

    /// <summary>It said that it is held back, and why; nothing that was there is touched.</summary>
    public void AssertHeld(string why)
    {
        WaitFor($"the service to be held back by \"{why}\"", () => _service.HasEnded || _service.Said.Contains("held back, tried again at every look: ", StringComparison.Ordinal));
        Assert.False(_service.HasEnded, _service.Said);
        Assert.Contains(why, _service.Said, StringComparison.Ordinal);
        AssertUntouched();
    }

    public void AssertUntouched()
    {
        Assert.Equal(_oldSheet, OldSheet());
        SiteState.AssertWhole(_site);
        SiteState.AssertEachOnce(_site, SecondDay.Example.Inbox);
    }

    /// <summary>The disk is well again: by itself it takes what came and issues the sheet, which says that it was held back; so does the log's file.</summary>
    public void AssertRecovers(string why)
    {
        WaitFor("the sheet", () => _service.HasEnded || IsWritten(SecondDay.Date));
        Assert.Equal(0, _service.Stop());
        AssertUntouched();
        var sentence = "The work on this site was held back from 2026-06-09 04:5";
        var text = OneLine(File.ReadAllText(Path.Combine(_site.ReportFolder(SecondDay.Date), "report-full.txt")));
        Assert.Contains(sentence, text, StringComparison.Ordinal);
        Assert.Contains(why, text, StringComparison.Ordinal);
        Assert.Contains(sentence, string.Concat(Directory.GetFiles(Logs, "dailyadjust*").Select(File.ReadAllText)), StringComparison.Ordinal);
        AssertFilesAreAsIssued(SecondDay.Date);
    }

    /// <summary>The same where the sheet was fixed before the disk refused: it says nothing of it.</summary>
    public void AssertRecoversWithTheSheetAsItWas()
    {
        WaitFor("the sheet", () => _service.HasEnded || IsWritten(SecondDay.Date));
        Assert.Equal(0, _service.Stop());
        AssertUntouched();
        AssertFilesAreAsIssued(SecondDay.Date);
    }

    public void AssertFilesAreAsIssued(DateOnly date)
    {
        var issued = SiteState.InCopy(_site, file =>
        {
            using var ledger = SiteLedger.Open(file, LedgerMode.Read);
            return ledger.Sheets.ReportFiles(date, 1);
        });
        Assert.NotEmpty(issued);
        Assert.All(issued, file => Assert.Equal(file.Value, File.ReadAllBytes(Path.Combine(_site.ReportFolder(date), file.Key))));
        Assert.Empty(Directory.GetFiles(_site.Path, ".*", SearchOption.AllDirectories));
    }

    public bool IsWritten(DateOnly date) => HasStep(date, "'written'");

    /// <summary>What the sheet says is fixed, whether its files are there or not.</summary>
    public bool IsFixed(DateOnly date) => HasStep(date, "'computed', 'written'");

    private bool HasStep(DateOnly date, string steps)
    {
        try
        {
            var sql = string.Create(CultureInfo.InvariantCulture, $"SELECT count(*) FROM morning WHERE day = '{date:yyyy-MM-dd}' AND step IN ({steps})");
            return SiteState.InCopy(_site, file => SiteState.Number(file, sql)) > 0;
        }
        catch (Microsoft.Data.Sqlite.SqliteException)
        {
            // Copied while it was written: the next look is better.
            return false;
        }
    }

    public int Stop() => _service.Stop();

    /// <summary>Tells what the service said where it waits in vain.</summary>
    public void WaitFor(string what, Func<bool> holds)
    {
        try
        {
            MailServer.WaitFor(what, holds);
        }
        catch (Xunit.Sdk.XunitException vain)
        {
            Assert.Fail($"{vain.Message} The service said:\n{_service.Said}");
        }
    }

    public void Dispose() => _service.Dispose();

    private string OldSheet() => string.Join('\n', Directory.GetFiles(_site.ReportFolder(SecondDay.Date.AddDays(-1))).Order(StringComparer.Ordinal).Select(f => Path.GetFileName(f) + "\n" + File.ReadAllText(f)));

    private static string OneLine(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
