using DailyAdjust.Ledger;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.Tests.Ledger;

[Trait("Promise", "7")]
public sealed class CareTests : IDisposable
{
    private readonly LedgerFolder _home = new();

    [Theory]
    [InlineData(LedgerMode.Write)]
    [InlineData(LedgerMode.Read)]
    public void A_backup_holds_everything_and_opens_as_a_ledger(LedgerMode mode)
    {
        using var copy = new LedgerFolder();
        Fill();
        using (var ledger = SiteLedger.Open(_home.Ledger, mode, TimeSpan.Zero))
        {
            ledger.Backup(copy.Ledger);
        }

        Assert.Equal(["ledger.db"], Directory.GetFiles(copy.Folder).Select(f => Path.GetFileName(f)), StringComparer.Ordinal);
        using var back = copy.Write();
        Assert.Equal(2, back.Watermark);
        Assert.Equal(Samples.Bytes("some bytes"), Samples.BytesOf(back, 1));
        Assert.Equal(Samples.Lines, Assert.Single(back.Sheets.Issued()).Lines);
        Assert.Empty(back.IntegrityCheck(everyFile: true));
    }

    [Fact]
    public void A_backup_overwrites_nothing()
    {
        Fill();
        using var ledger = _home.Write();
        var taken = Path.Combine(_home.Folder, "taken.db");
        File.WriteAllText(taken, "mine");
        Assert.Throws<IOException>(() => ledger.Backup(taken));
        Assert.Equal("mine", File.ReadAllText(taken));
    }

    [Fact]
    public void A_backup_to_nowhere_says_so()
    {
        Fill();
        using var ledger = _home.Write();
        var e = Assert.Throws<LedgerException>(() => ledger.Backup(Path.Combine(_home.Folder, "no", "copy.db")));
        Assert.Contains(Path.Combine("no", "copy.db"), e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_page_is_found()
    {
        Fill();
        using (var ledger = _home.Write())
        {
            ledger.InOneStep(() =>
            {
                for (var i = 0; i < 400; i++)
                {
                    ledger.States.Put(Samples.State(Samples.Day.AddDays(i), 60), "h");
                }
            });
        }

        var bytes = File.ReadAllBytes(_home.Ledger);
        for (var page = bytes.Length / 2 / 4096; page < (bytes.Length / 2 / 4096) + 20; page++)
        {
            bytes.AsSpan(page * 4096, 200).Fill(0xA5);
        }

        File.WriteAllBytes(_home.Ledger, bytes);
        using var damaged = _home.Read();
        Assert.NotEmpty(damaged.IntegrityCheck());
    }

    [Fact]
    public void A_stored_file_that_no_longer_unpacks_to_its_hash_is_found()
    {
        Fill();
        using (var connection = new SqliteConnection($"Data Source={_home.Ledger};Pooling=False"))
        {
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = "DROP TRIGGER file_chunk_update; UPDATE file_chunk SET body = x'0b0480626164646164626164640103', length = 10";
            command.ExecuteNonQuery();
        }

        using var ledger = _home.Read();
        Assert.Empty(ledger.IntegrityCheck());
        Assert.Contains("a.csv", Assert.Single(ledger.IntegrityCheck(everyFile: true)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(13, 13, LedgerTrouble.Full)]
    [InlineData(10, 4874, LedgerTrouble.Full)]
    [InlineData(10, 1034, LedgerTrouble.Io)]
    [InlineData(10, 778, LedgerTrouble.Io)]
    [InlineData(8, 8, LedgerTrouble.Denied)]
    [InlineData(14, 14, LedgerTrouble.Denied)]
    [InlineData(3, 3, LedgerTrouble.Denied)]
    [InlineData(5, 5, LedgerTrouble.Busy)]
    [InlineData(6, 6, LedgerTrouble.Busy)]
    [InlineData(11, 11, LedgerTrouble.Corrupt)]
    [InlineData(26, 26, LedgerTrouble.Corrupt)]
    public void What_the_disk_reports_becomes_a_trouble_with_a_sentence(int code, int extended, LedgerTrouble expected)
    {
        var trouble = Troubles.From(new SqliteException("as SQLite says it", code, extended), _home.Ledger);
        Assert.Equal(expected, trouble!.Trouble);
        Assert.Contains(_home.Ledger, trouble.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(10, 1034)]
    [InlineData(14, 14)]
    public void A_folder_that_was_taken_away_is_no_disk_that_failed(int code, int extended) =>
        Assert.Equal(LedgerTrouble.Missing, Troubles.From(new SqliteException("as SQLite says it", code, extended), Path.Combine(_home.Folder, "gone", "ledger.db"))!.Trouble);

    [Fact]
    public void A_mistake_of_the_caller_is_not_blamed_on_the_disk() =>
        Assert.Null(Troubles.From(new SqliteException("constraint", 19, 1811), "x"));

    public void Dispose() => _home.Dispose();

    private void Fill()
    {
        using var ledger = _home.Write();
        ledger.Files.Store("a.csv", "yard", Samples.Bytes("some bytes"), LedgerFolder.Noon);
        ledger.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
        ledger.Mornings.Begin(Samples.Day, LedgerFolder.Noon, "1", "2026a");
        ledger.Mornings.RecordComputed(Samples.Day, 1, Samples.Lines, Samples.ReportFiles);
    }
}
