using System.Security.Cryptography;
using DailyAdjust.Ledger;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Disk;

/// <summary>Whoever reads a sheet while its next issue replaces it gets one of the two, whole.</summary>
[Trait("Promise", "2")]
public sealed class WholeFilesTests
{
    [Fact]
    public async Task A_reader_never_sees_half_a_file()
    {
        using var home = SecondDay.Example.HomeWithInbox();
        var site = SecondDay.Site(home);
        Issue(home);
        var folder = site.ReportFolder(SecondDay.Date);
        var seen = new HashSet<(string Name, string Sha)>();
        var reads = 0;
        using var stop = new CancellationTokenSource();
        var reader = Task.Run(() =>
        {
            var names = Directory.GetFiles(folder).Select(f => Path.GetFileName(f)!).ToList();
            while (!stop.IsCancellationRequested)
            {
                foreach (var name in names)
                {
                    seen.Add((name, Sha(File.ReadAllBytes(Path.Combine(folder, name)))));
                    reads++;
                }
            }
        });
        var issues = Tried.Times(3, 40);
        try
        {
            for (var issue = 0; issue < issues; issue++)
            {
                Issue(home);
            }
        }
        finally
        {
            await stop.CancelAsync();
            await reader;
        }

        using var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Read);
        var whole = Enumerable.Range(1, issues + 1).SelectMany(issue => ledger.Sheets.ReportFiles(SecondDay.Date, issue)).Select(f => (f.Key, Sha(f.Value))).ToHashSet();
        Assert.Subset(whole, seen);
        Assert.True(seen.Count(s => s.Name is "report.html") > 1, "the reader saw no page replaced");
        Tried.Held(2, "whole files read while they were replaced", reads);
    }

    private static void Issue(TestHome home)
    {
        var result = RunningProgram.Run("morning", "--home", home.Path, "--date", "2026-06-09");
        Assert.True(result.ExitCode == 0, result.ToString());
    }

    private static string Sha(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
