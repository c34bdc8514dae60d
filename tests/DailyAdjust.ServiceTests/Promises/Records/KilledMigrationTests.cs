using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A ledger of older tables, and a program that is killed while it brings them up.</summary>
[Trait("Promise", "7")]
public sealed class KilledMigrationTests : IDisposable
{
    private const string Old = "1";

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly string _note;
    private readonly byte[] _ledger;
    private readonly IReadOnlyList<string> _counts;

    public KilledMigrationTests()
    {
        KillPoints.SkipWithoutStrace();
        _site = ExampleSite.TakenIn(_home);
        RawLedger.MakeOld(_site.LedgerFile);
        RawLedger.Scalar(_site.LedgerFile, "PRAGMA wal_checkpoint(TRUNCATE)");
        _ledger = File.ReadAllBytes(_site.LedgerFile);
        _counts = RawLedger.Counts(_site.LedgerFile);
        _note = Path.Combine(_home.Path, "note.csv");
        File.WriteAllText(_note, "time,kind,where,value,unit,until,by,note\n2026-06-10 10:30,note,site,,,,,brought up\n");
    }

    private string[] Command => ["ingest", _note, "--home", _home.Path];

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Killed_at_every_write_it_is_whole_old_or_new_and_goes_on()
    {
        var points = KillPoints.Of(_home.Path, Command);
        var current = RawLedger.Scalar(_site.LedgerFile, "PRAGMA user_version");
        Assert.NotEqual(Old, current);
        Assert.True(points.Count > 50, "the calls were not seen");
        var tried = points.Some(Tried.Times(8, int.MaxValue));
        var old = 0;
        foreach (var point in tried)
        {
            Begin();
            KillPoints.Kill(point, Command);
            Assert.True(RawLedger.IsWhole(_site.LedgerFile), $"{point}: the ledger is damaged.");
            var version = RawLedger.Scalar(_site.LedgerFile, "PRAGMA user_version");
            Assert.True(version is Old || string.Equals(version, current, StringComparison.Ordinal), $"{point}: version {version}");
            old += version is Old ? 1 : 0;
            RequireCopy(point, isNeeded: version is not Old);

            var again = RunningProgram.Run(Command);
            Assert.True(again.ExitCode == 0, $"{point}: {again}");
            Assert.Equal(current, RawLedger.Scalar(_site.LedgerFile, "PRAGMA user_version"));
            Assert.Equal("1", RawLedger.Scalar(_site.LedgerFile, "SELECT count(*) FROM logbook WHERE body LIKE '%brought up%'"));
            Assert.True(RawLedger.IsWhole(_site.LedgerFile), $"{point}: the ledger is damaged.");
            RequireCopy(point, isNeeded: true);
        }

        Assert.InRange(old, 1, tried.Count - 1);
        Tried.Held(7, "kills while tables are brought up", tried.Count);
    }

    private void Begin()
    {
        foreach (var left in Directory.GetFiles(_site.Path, "ledger.db*"))
        {
            File.Delete(left);
        }

        if (Directory.Exists(_site.Backups))
        {
            Directory.Delete(_site.Backups, recursive: true);
        }

        File.WriteAllBytes(_site.LedgerFile, _ledger);
    }

    /// <summary>Whatever is called a backup is one: whole, of the old tables, with all that was there.</summary>
    private void RequireCopy(KillPoint point, bool isNeeded)
    {
        var copies = Directory.Exists(_site.Backups) ? Directory.GetFiles(_site.Backups, "*.db") : [];
        Assert.True(copies.Length > 0 || !isNeeded, $"{point}: there is no copy of before.");
        foreach (var copy in copies)
        {
            Assert.True(RawLedger.IsWhole(copy), $"{point}: {copy} is damaged.");
            Assert.Equal(Old, RawLedger.Scalar(copy, "PRAGMA user_version"));
            Assert.Equal(_counts, RawLedger.Counts(copy));
        }
    }
}
