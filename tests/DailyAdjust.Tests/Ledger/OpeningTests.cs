using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.Tests.Ledger;

public sealed class OpeningTests : IDisposable
{
    private readonly LedgerFolder _home = new();

    [Fact]
    public void A_new_ledger_is_durable_strict_and_empty()
    {
        using var ledger = _home.Write();
        Assert.Equal("wal", ledger.Db.First("PRAGMA journal_mode", r => r.GetString(0)));
        Assert.Equal(2, ledger.Db.Number("PRAGMA synchronous"));
        Assert.Equal(1, ledger.Db.Number("PRAGMA foreign_keys"));
        Assert.Equal(0, ledger.Watermark);
        Assert.Equal(0, ledger.Db.Number("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite_%' AND strict = 0"));
        Assert.Empty(ledger.IntegrityCheck(everyFile: true));
    }

    [Fact]
    public void Opening_again_changes_nothing()
    {
        _home.Write().Dispose();
        var before = File.ReadAllBytes(_home.Ledger);
        _home.Write().Dispose();
        _home.Read().Dispose();
        Assert.Equal(before, File.ReadAllBytes(_home.Ledger));
    }

    [Theory]
    [InlineData(LedgerMode.Read)]
    [InlineData(LedgerMode.Write)]
    public void A_newer_ledger_is_refused_and_left_as_it_is(LedgerMode mode)
    {
        _home.Write().Dispose();
        Raw("PRAGMA user_version = 99");
        var before = File.ReadAllBytes(_home.Ledger);
        var e = Assert.Throws<LedgerException>(() => SiteLedger.Open(_home.Ledger, mode, TimeSpan.Zero));
        Assert.Equal(LedgerTrouble.NewerSchema, e.Trouble);
        Assert.Contains("newer", e.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(_home.Ledger));
    }

    [Fact]
    public void Another_programs_database_is_refused_and_left_as_it_is()
    {
        Raw("CREATE TABLE theirs (x)");
        var before = File.ReadAllBytes(_home.Ledger);
        Assert.Equal(LedgerTrouble.Corrupt, Assert.Throws<LedgerException>(_home.Write).Trouble);
        Assert.Equal(LedgerTrouble.Corrupt, Assert.Throws<LedgerException>(_home.Read).Trouble);
        Assert.Equal(before, File.ReadAllBytes(_home.Ledger));
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused()
    {
        File.WriteAllText(_home.Ledger, new string('x', 5000));
        Assert.Equal(LedgerTrouble.Corrupt, Assert.Throws<LedgerException>(_home.Write).Trouble);
        Assert.Equal(5000, new FileInfo(_home.Ledger).Length);
    }

    [Fact]
    public void Nothing_to_read_is_said_and_not_created()
    {
        Assert.Equal(LedgerTrouble.Missing, Assert.Throws<LedgerException>(_home.Read).Trouble);
        Assert.False(File.Exists(_home.Ledger));
        File.WriteAllBytes(_home.Ledger, []);
        Assert.Equal(LedgerTrouble.Missing, Assert.Throws<LedgerException>(_home.Read).Trouble);
        var nowhere = Path.Combine(_home.Folder, "no", "ledger.db");
        Assert.Equal(LedgerTrouble.Missing, Assert.Throws<LedgerException>(() => SiteLedger.Open(nowhere, LedgerMode.Write, TimeSpan.Zero)).Trouble);
    }

    [Fact]
    public void A_second_writer_is_refused_until_the_first_is_done()
    {
        using (_home.Write())
        {
            var e = Assert.Throws<LedgerException>(_home.Write);
            Assert.Equal(LedgerTrouble.Busy, e.Trouble);
            Assert.Contains("ledger.lock", e.Message, StringComparison.Ordinal);
        }

        _home.Write().Dispose();
    }

    [Fact]
    public async Task A_second_writer_waits_when_told_to()
    {
        var first = _home.Write();
        var second = Task.Run(() => SiteLedger.Open(_home.Ledger, LedgerMode.Write, TimeSpan.FromSeconds(30)));
        await Task.Delay(150);
        Assert.False(second.IsCompleted);
        first.Dispose();
        (await second).Dispose();
    }

    [Fact]
    public void A_writer_that_fails_to_open_lets_go_of_the_lock()
    {
        File.WriteAllText(_home.Ledger, new string('x', 5000));
        Assert.Throws<LedgerException>(_home.Write);
        File.Delete(_home.Ledger);
        _home.Write().Dispose();
    }

    [Fact]
    public void A_reader_sees_what_was_kept_and_cannot_write()
    {
        using var writer = _home.Write();
        using var reader = _home.Read();
        writer.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
        Assert.Equal(1, reader.Watermark);
        var e = Assert.Throws<LedgerException>(() => reader.Logbook.Add([Samples.Entry("2026-06-09", LogKind.Note, Samples.Site)], LedgerFolder.Noon));
        Assert.Equal(LedgerTrouble.Denied, e.Trouble);
        Assert.Equal(1, writer.Watermark);
    }

    [Fact]
    public void A_reader_leaves_the_folder_as_it_found_it()
    {
        using (var writer = _home.Write())
        {
            writer.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
        }

        var before = Directory.GetFiles(_home.Folder);
        using (var first = _home.Read())
        {
            Assert.Equal(1, first.Watermark);
        }

        Assert.Equal(before, Directory.GetFiles(_home.Folder));
    }

    [Fact]
    public void A_reader_leaves_the_log_of_a_killed_writer_to_the_next_one()
    {
        using var killed = new LedgerFolder();
        using (var writer = _home.Write())
        {
            writer.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
            File.Copy(_home.Ledger, killed.Ledger);
            File.Copy(_home.Ledger + "-wal", killed.Ledger + "-wal");
        }

        var (file, log) = (File.ReadAllBytes(killed.Ledger), File.ReadAllBytes(killed.Ledger + "-wal"));
        Assert.NotEmpty(log);
        using (var reader = killed.Read())
        {
            Assert.Equal(1, reader.Watermark);
        }

        Assert.Equal(file, File.ReadAllBytes(killed.Ledger));
        Assert.Equal(log, File.ReadAllBytes(killed.Ledger + "-wal"));
        killed.Write().Dispose();
        Assert.False(File.Exists(killed.Ledger + "-wal"));
    }

    [Fact]
    public void A_view_stands_still_while_a_writer_adds()
    {
        using var writer = _home.Write();
        using var reader = _home.Read();
        reader.InOneView(() =>
        {
            Assert.Equal(0, reader.Watermark);
            writer.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
            Assert.Empty(reader.Logbook.Effective());
            return 0;
        });
        Assert.Single(reader.Logbook.Effective());
    }

    [Fact]
    public void Another_connection_that_holds_the_file_makes_it_busy()
    {
        using var ledger = _home.Write();
        using var other = RawConnection();
        Run(other, "BEGIN IMMEDIATE");
        Assert.Equal(LedgerTrouble.Busy, Assert.Throws<LedgerException>(() => ledger.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon)).Trouble);
        Run(other, "ROLLBACK");
        ledger.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
        Assert.Equal(1, ledger.Watermark);
    }

    public void Dispose() => _home.Dispose();

    private static void Run(SqliteConnection connection, string sql)
    {
        using var command = connection.CreateCommand();
#pragma warning disable CA2100 // A constant of this test.
        command.CommandText = sql;
#pragma warning restore CA2100
        command.ExecuteNonQuery();
    }

    private SqliteConnection RawConnection()
    {
        var connection = new SqliteConnection($"Data Source={_home.Ledger};Pooling=False");
        connection.Open();
        return connection;
    }

    private void Raw(string sql)
    {
        using var connection = RawConnection();
        Run(connection, sql);
        Run(connection, "PRAGMA wal_checkpoint(TRUNCATE)");
    }
}
