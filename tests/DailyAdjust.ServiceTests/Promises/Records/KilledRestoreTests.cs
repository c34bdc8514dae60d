using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A restore that is killed at every write, flush and rename.</summary>
[Trait("Promise", "7")]
public sealed class KilledRestoreTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly string _backup;
    private readonly DirectoryInfo _kept;

    public KilledRestoreTests()
    {
        KillPoints.SkipWithoutStrace();
        _site = ExampleSite.TakenIn(_home);
        Assert.Equal(0, RunningProgram.Run("backup", "--home", _home.Path).ExitCode);
        _backup = Assert.Single(Directory.GetFiles(_site.Backups));
        Assert.Equal(0, RunningProgram.Run("log", "note", "after the backup", "--date", "2026-06-10", "--home", _home.Path).ExitCode);
        _kept = Directory.CreateDirectory(Path.Combine(_home.Path, "kept"));
        File.Copy(_site.LedgerFile, Path.Combine(_kept.FullName, "ledger.db"));
    }

    private string[] Command => ["restore", _backup, "--home", _home.Path];

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Nothing_is_lost_nothing_empty_is_begun_and_the_next_restore_goes_through()
    {
        var rows = RawLedger.Rows(_site.LedgerFile);
        var points = KillPoints.Of(_home.Path, Command);
        Assert.True(points.Count > 30, "the calls were not seen");

        // The renames in any case: between them there is no ledger.
        var between = points.Where(p => p.Call is "rename").ToList();
        var tried = points.Some(Tried.Times(5, int.MaxValue)).Union(between).ToList();
        var without = 0;
        foreach (var point in tried)
        {
            Begin();
            KillPoints.Kill(point, Command);
            if (File.Exists(_site.LedgerFile))
            {
                Assert.True(RawLedger.IsWhole(_site.LedgerFile), $"{point}: the ledger is damaged.");
                Assert.Equal(rows, RawLedger.Rows(_site.LedgerFile));
            }
            else
            {
                without++;
                var refused = RunningProgram.Run("log", "note", "x", "--home", _home.Path);
                Assert.Equal(1, refused.ExitCode);
                Assert.Contains("a restore was cut short", refused.Error, StringComparison.Ordinal);
                Assert.False(File.Exists(_site.LedgerFile), $"{point}: an empty ledger was begun.");
            }

            var again = RunningProgram.Run(Command);
            Assert.True(again.ExitCode == 0, $"{point}: {again}");
            Assert.Equal(rows, RawLedger.Rows(_site.LedgerFile));
            Assert.Equal(["ledger.db"], Directory.GetFiles(_site.Path, "ledger.db*").Select(f => Path.GetFileName(f)));
        }

        Assert.True(without > 0, "it was never killed between two renames");
        Tried.Held(7, "kills while a backup is restored", tried.Count);
    }

    private void Begin()
    {
        if (Directory.Exists(_site.SetAside))
        {
            Directory.Delete(_site.SetAside, recursive: true);
        }

        foreach (var left in Directory.GetFiles(_site.Path, "ledger.db*"))
        {
            File.Delete(left);
        }

        File.Copy(Path.Combine(_kept.FullName, "ledger.db"), _site.LedgerFile);
    }
}
