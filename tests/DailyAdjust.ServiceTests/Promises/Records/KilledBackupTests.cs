using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A backup that is killed on its way.</summary>
[Trait("Promise", "7")]
public sealed class KilledBackupTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public KilledBackupTests()
    {
        KillPoints.SkipWithoutStrace();
        _site = ExampleSite.TakenIn(_home);
    }

    public void Dispose() => _home.Dispose();

    [Fact]
    public void What_is_called_a_backup_is_a_whole_one_and_the_next_is_made()
    {
        string[] command = ["backup", "--home", _home.Path];
        var counts = RawLedger.Counts(_site.LedgerFile);
        var points = KillPoints.Of(_home.Path, command);
        Assert.True(points.Count > 20, "the calls were not seen");
        var tried = points.Some(Tried.Times(4, int.MaxValue));
        foreach (var point in tried)
        {
            KillPoints.Kill(point, command);
            Assert.All(Directory.GetFiles(_site.Backups, "*.db"), backup =>
            {
                Assert.True(RawLedger.IsWhole(backup), $"{point}: {backup}");
                Assert.Equal(counts, RawLedger.Counts(backup));
            });
            var before = Directory.GetFiles(_site.Backups, "*.db").Length;
            Assert.Equal(0, RunningProgram.Run(command).ExitCode);
            Assert.Equal(before + 1, Directory.GetFiles(_site.Backups, "*.db").Length);
        }

        Tried.Held(7, "kills while a backup is made", tried.Count);
    }
}
