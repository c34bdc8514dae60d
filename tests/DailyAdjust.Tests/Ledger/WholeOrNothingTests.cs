using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Derived;
using Xunit;

namespace DailyAdjust.Tests.Ledger;

public sealed class WholeOrNothingTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public WholeOrNothingTests()
    {
        _ledger = _home.Write();
        _ledger.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
    }

    [Fact]
    public void A_step_that_fails_keeps_nothing_and_the_next_one_works()
    {
        Assert.Throws<TimeoutException>(() => _ledger.InOneStep(() =>
        {
            AddAll();
            throw new TimeoutException();
        }));
        AssertNothingAdded(_ledger);
        _ledger.InOneStep(AddAll);
        Assert.Equal(3, _ledger.Watermark);
    }

    [Fact]
    public void A_step_whose_part_failed_keeps_nothing_even_when_the_failure_is_caught()
    {
        Assert.Throws<InvalidOperationException>(() => _ledger.InOneStep(() =>
        {
            AddAll();
            try
            {
                _ledger.Files.SetRead(new DailyAdjust.Ledger.Inputs.FileRead(99, "", 0, 0, 0, ""));
            }
            catch (Microsoft.Data.Sqlite.SqliteException)
            {
                // As a careless caller would.
            }
        }));
        AssertNothingAdded(_ledger);
    }

    [Fact]
    public void Nothing_of_an_unfinished_step_is_seen_by_a_reader_or_after_a_crash()
    {
        using var crashed = new LedgerFolder();
        Assert.Throws<TimeoutException>(() => _ledger.InOneStep(() =>
        {
            AddAll();

            // So large that SQLite spills pages of the unfinished step into the log.
            var bytes = new byte[9_000_000];
            new Random(1).NextBytes(bytes);
            _ledger.Files.Store("large.bin", "yard", bytes, LedgerFolder.Noon);
            Assert.True(new FileInfo(_home.Ledger + "-wal").Length > 1_000_000);
            using (var reader = _home.Read())
            {
                AssertNothingAdded(reader);
            }

            // What a disk would hold if the power went now.
            File.Copy(_home.Ledger, crashed.Ledger);
            File.Copy(_home.Ledger + "-wal", crashed.Ledger + "-wal");
            throw new TimeoutException();
        }));
        using var after = crashed.Write();
        AssertNothingAdded(after);
        Assert.Empty(after.IntegrityCheck(everyFile: true));
    }

    [Theory]
    [InlineData(LedgerMode.Write)]
    [InlineData(LedgerMode.Read)]
    public void What_was_kept_is_there_after_a_crash(LedgerMode mode)
    {
        using var crashed = new LedgerFolder();
        _ledger.InOneStep(AddAll);
        File.Copy(_home.Ledger, crashed.Ledger);
        File.Copy(_home.Ledger + "-wal", crashed.Ledger + "-wal");
        using var after = SiteLedger.Open(crashed.Ledger, mode, TimeSpan.Zero);
        Assert.Equal(3, after.Watermark);
        Assert.Equal(Samples.Bytes("time,rain\n"), Samples.BytesOf(after, 2));
        Assert.Empty(after.IntegrityCheck(everyFile: true));
    }

    [Fact]
    public void A_full_disk_is_told_and_leaves_everything_whole()
    {
        // SQLite's own limit gives the same result code as a disk without room.
        var pages = _ledger.Db.Number("PRAGMA page_count");
        _ledger.Db.Query($"PRAGMA max_page_count = {pages + 20}", r => r.GetInt64(0));
        var bytes = new byte[3_000_000];
        new Random(2).NextBytes(bytes);
        var e = Assert.Throws<LedgerException>(() => _ledger.Files.Store("large.bin", "yard", bytes, LedgerFolder.Noon));
        Assert.Equal(LedgerTrouble.Full, e.Trouble);
        AssertNothingAdded(_ledger);
        Assert.Empty(_ledger.IntegrityCheck(everyFile: true));

        // Some space was freed.
        _ledger.Db.Query($"PRAGMA max_page_count = {pages + 10_000}", r => r.GetInt64(0));
        Assert.Equal(2, _ledger.Files.Store("large.bin", "yard", bytes, LedgerFolder.Noon).Seq);
        Assert.True(bytes.AsSpan().SequenceEqual(Samples.BytesOf(_ledger, 2)));
    }

    [Fact]
    public void A_view_does_not_write()
    {
        Assert.Throws<InvalidOperationException>(() => _ledger.InOneView(() =>
        {
            AddAll();
            return 0;
        }));
        AssertNothingAdded(_ledger);
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private static void AssertNothingAdded(SiteLedger ledger)
    {
        Assert.Equal(1, ledger.Watermark);
        Assert.Empty(ledger.Files.List());
        Assert.Single(ledger.Logbook.Effective());
        Assert.Empty(ledger.Readings.Between("yard", Samples.Day, Samples.Day));
    }

    private void AddAll()
    {
        var file = _ledger.Files.Store("a.csv", "yard", Samples.Bytes("time,rain\n"), LedgerFolder.Noon);
        _ledger.Logbook.Add([Samples.Entry("2026-06-09", LogKind.Note, Samples.Site)], LedgerFolder.Noon);
        _ledger.Readings.Put([new ReadingDay("yard", Samples.Day, file.Seq, "m", [1])]);
    }
}
