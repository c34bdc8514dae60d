using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using Microsoft.Data.Sqlite;
using Xunit;

namespace DailyAdjust.Tests.Ledger;

/// <summary>What the tables themselves refuse, whoever asks.</summary>
public sealed class AppendOnlyTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public AppendOnlyTests()
    {
        _ledger = _home.Write();
        _ledger.Files.Store("a.csv", "yard", Samples.Bytes("x"), LedgerFolder.Noon);
        _ledger.Logbook.Add([Samples.FullEntry], LedgerFolder.Noon);
        _ledger.SiteVersions.Add(Samples.Day, corrects: false, [1], [2], LedgerFolder.Noon);
        _ledger.Mornings.Begin(Samples.Day, LedgerFolder.Noon, "1", "2026a");
        _ledger.Mornings.RecordComputed(Samples.Day, 1, Samples.Lines, Samples.ReportFiles);
    }

    [Theory]
    [InlineData("input", "kind = kind")]
    [InlineData("file", "name = 'other'")]
    [InlineData("file_chunk", "body = x'00'")]
    [InlineData("logbook", "body = ''")]
    [InlineData("site_version", "from_day = '2020-01-01'")]
    [InlineData("advice", "lines = ''")]
    [InlineData("report_file", "body = x'00'")]
    [InlineData("morning", "as_of = ''")]
    public void Nothing_kept_is_changed_or_deleted(string table, string change)
    {
        Assert.True(_ledger.Db.Number($"SELECT count(*) FROM {table}") > 0);
        var before = Dump(table);
        Assert.Contains("never", Assert.Throws<SqliteException>(() => _ledger.Db.Execute($"DELETE FROM {table}")).Message, StringComparison.Ordinal);
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute($"UPDATE {table} SET {change}"));
        Assert.Equal(before, Dump(table));
    }

    [Fact]
    public void An_upsert_cannot_replace_an_input()
    {
        var before = Dump("logbook");
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute(
            "INSERT INTO logbook (seq, time, kind, place, ordinal, body) VALUES (2, '', '', '', 0, '') ON CONFLICT (seq) DO UPDATE SET body = ''"));
        Assert.Equal(before, Dump("logbook"));
    }

    [Theory]
    [InlineData("step = 'written', watermark = 99")]
    [InlineData("step = 'written', sha = 'other'")]
    [InlineData("step = 'due'")]
    [InlineData("step = 'missed'")]
    [InlineData("step = 'computed'")]
    public void A_computed_morning_can_only_become_written(string change)
    {
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute($"UPDATE morning SET {change}"));
        _ledger.Mornings.RecordWritten(Samples.Day, 1);
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute("UPDATE morning SET step = 'computed'"));
    }

    [Fact]
    public void Wrong_types_and_dangling_numbers_are_refused()
    {
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute("INSERT INTO input (kind, at) VALUES ('file', x'00')"));
        Assert.Throws<SqliteException>(() => _ledger.Db.Execute("INSERT INTO input (kind, at) VALUES ('weather', '')"));
        Assert.Throws<SqliteException>(() => _ledger.Logbook.Add([Samples.Entry("2026-06-09", LogKind.Note, Samples.Site)], LedgerFolder.Noon, fromFile: 77));
        Assert.Equal(3, _ledger.Watermark);
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private List<string> Dump(string table) => _ledger.Db.Query($"SELECT * FROM {table}", r =>
    {
        var values = new object[r.FieldCount];
        r.GetValues(values);
        return string.Join('|', values.Select(v => v is byte[] b ? Convert.ToHexString(b) : v.ToString()));
    });
}
