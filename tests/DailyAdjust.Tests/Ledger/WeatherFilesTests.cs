using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Inputs;
using Xunit;

namespace DailyAdjust.Tests.Ledger;

public sealed class WeatherFilesTests : IDisposable
{
    private readonly LedgerFolder _home = new();
    private readonly SiteLedger _ledger;

    public WeatherFilesTests() => _ledger = _home.Write();

    [Fact]
    public void The_same_file_twice_changes_nothing()
    {
        var first = Store("a.csv", "yard", "time,rain\n1,2\n");
        var rows = _ledger.Db.Number("SELECT total_changes()");
        var again = Store("a.csv", "yard", "time,rain\n1,2\n");
        var renamed = Store("copy of a.csv", "yard", "time,rain\n1,2\n");
        Assert.Equal(new FileStored(1, FileOutcome.New, 0, null), first);
        Assert.Equal(new FileStored(1, FileOutcome.AlreadyKnown, 14, null), again);
        Assert.Equal(again, renamed);
        Assert.Equal(rows, _ledger.Db.Number("SELECT total_changes()"));
        Assert.Equal(1, _ledger.Watermark);
    }

    [Fact]
    public void A_grown_file_keeps_only_its_tail_and_comes_back_whole()
    {
        Store("a.csv", "yard", "time,rain\n1,2\n");
        var grown = Store("a.csv", "yard", "time,rain\n1,2\n3,4\n");
        var more = Store("b.csv", "yard", "time,rain\n1,2\n3,4\n5,6\n");
        Assert.Equal(new FileStored(2, FileOutcome.Grew, 14, 1), grown);
        Assert.Equal(new FileStored(3, FileOutcome.Grew, 18, 2), more);
        Assert.Equal(14 + 4 + 4, _ledger.Db.Number("SELECT sum(length) FROM file_chunk"));
        Assert.Equal(Samples.Bytes("time,rain\n1,2\n"), Samples.BytesOf(_ledger, 1));
        Assert.Equal(Samples.Bytes("time,rain\n1,2\n3,4\n"), Samples.BytesOf(_ledger, 2));
        Assert.Equal(Samples.Bytes("time,rain\n1,2\n3,4\n5,6\n"), Samples.BytesOf(_ledger, 3));
    }

    [Fact]
    public void A_changed_or_shortened_file_is_a_new_one()
    {
        Store("a.csv", "yard", "time,rain\n1,2\n3,4\n");
        Assert.Equal(FileOutcome.New, Store("a.csv", "yard", "time,rain\n1,3\n3,4\n").Outcome);
        Assert.Equal(FileOutcome.New, Store("a.csv", "yard", "time,rain\n1,2\n").Outcome);
        Assert.Equal(Samples.Bytes("time,rain\n1,2\n"), Samples.BytesOf(_ledger, 3));
    }

    [Fact]
    public void Another_sources_bytes_are_new_to_this_source_and_stored_once()
    {
        Store("a.csv", "yard", "time,rain\n1,2\n");
        Assert.Equal(new FileStored(2, FileOutcome.New, 0, null), Store("a.csv", "far", "time,rain\n1,2\n"));
        Assert.Equal(14, _ledger.Db.Number("SELECT sum(length) FROM file_chunk"));
        Assert.Equal(Samples.Bytes("time,rain\n1,2\n"), Samples.BytesOf(_ledger, 2));

        // What the other source has read beyond this one's own file is not read for this one yet.
        Store("a.csv", "yard", "time,rain\n1,2\n3,4\n");
        Assert.Equal(new FileStored(4, FileOutcome.Grew, 14, 2), Store("a.csv", "far", "time,rain\n1,2\n3,4\n"));
    }

    [Fact]
    public void An_empty_file_is_kept_and_is_nobodys_beginning()
    {
        Assert.Equal(FileOutcome.New, Store("a.csv", "yard", "").Outcome);
        Assert.Equal(FileOutcome.AlreadyKnown, Store("a.csv", "yard", "").Outcome);
        Assert.Equal(FileOutcome.New, Store("a.csv", "yard", "x").Outcome);
        Assert.Empty(Samples.BytesOf(_ledger, 1));
    }

    [Theory]
    [InlineData((1 << 20) - 1)]
    [InlineData(1 << 20)]
    [InlineData((1 << 20) + 1)]
    [InlineData(3_500_000)]
    public void Large_files_come_back_byte_for_byte_from_any_offset(int length)
    {
        // Bytes that do not pack at all, so that a piece may be larger packed than plain.
        var bytes = new byte[length + 1_234_567];
        new Random(length).NextBytes(bytes);
        _ledger.Files.Store("a.bin", "yard", bytes[..length], LedgerFolder.Noon);
        var grown = _ledger.Files.Store("a.bin", "yard", bytes, LedgerFolder.Noon);
        Assert.Equal(new FileStored(2, FileOutcome.Grew, length, 1), grown);
        Assert.True(bytes.AsSpan().SequenceEqual(Samples.BytesOf(_ledger, 2)));
        foreach (var from in (int[])[0, 1, length - 1, length, length + 1, bytes.Length - 1, bytes.Length])
        {
            using var stream = _ledger.Files.OpenRead(2, from);
            using var rest = new MemoryStream();
            stream.CopyTo(rest, 777);
            Assert.True(bytes.AsSpan(from).SequenceEqual(rest.ToArray()), $"from {from}");
        }
    }

    [Fact]
    public void A_file_that_grew_a_thousand_times_comes_back()
    {
        var text = "time,rain\n";
        for (var i = 0; i < 1000; i++)
        {
            text += FormattableString.Invariant($"{i},0\n");
            Assert.Equal(i == 0 ? FileOutcome.New : FileOutcome.Grew, Store("a.csv", "yard", text).Outcome);
        }

        Assert.Equal(Samples.Bytes(text), Samples.BytesOf(_ledger, 1000));
        Assert.Equal(text.Length, _ledger.Db.Number("SELECT sum(length) FROM file_chunk"));
    }

    [Fact]
    public void A_file_that_changes_while_it_is_read_is_not_kept()
    {
        using var shifting = new ShiftingStream(Samples.Bytes("time,rain\n1,2\n"));
        Assert.Throws<IOException>(() => _ledger.Files.Store("a.csv", "yard", shifting, LedgerFolder.Noon));
        Assert.Equal(0, _ledger.Watermark);
        Assert.Empty(_ledger.Files.List());
    }

    [Fact]
    public void Counts_are_kept_with_the_file_and_follow_its_latest_reading()
    {
        var seq = Store("a.csv", "yard", "x").Seq;
        Assert.Null(_ledger.Files.ReadOf(seq));
        Assert.Equal([seq], _ledger.Files.NotReadWith("yard", "m1").Select(f => f.Seq));
        _ledger.Files.SetRead(new FileRead(seq, "m1", 10, 2, 1, "line 3: no date"));
        Assert.Empty(_ledger.Files.NotReadWith("yard", "m1"));
        Assert.Equal([seq], _ledger.Files.NotReadWith("yard", "m2").Select(f => f.Seq));
        var second = new FileRead(seq, "m2", 11, 1, 1, "");
        _ledger.Files.SetRead(second);
        Assert.Equal(second, _ledger.Files.ReadOf(seq));
    }

    [Fact]
    public void A_files_particulars_come_back()
    {
        Store("a.csv", "yard", "abc");
        Store("b.csv", "logbook", "abcd");
        var at = new DateTimeOffset(2026, 6, 8, 14, 0, 0, TimeSpan.FromHours(2)).AddTicks(1234567);
        _ledger.Files.Store("a.csv", "yard", Samples.Bytes("abcde"), at);

        // SHA-256 of "abc": FIPS 180-4 example (NIST, SHA256.pdf, one-block message sample).
        Assert.Equal("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad", _ledger.Files.Get(1).Sha);
        var last = _ledger.Files.Get(3);
        Assert.Equal(("a.csv", "yard", 5L, (long?)1, 3L, at), (last.Name, last.Source, last.Length, last.BaseSeq, last.BaseLength, last.At));
        Assert.Equal([1L, 3L], _ledger.Files.List("yard").Select(f => f.Seq));
        Assert.Equal(3, _ledger.Files.List().Count);
        Assert.Throws<KeyNotFoundException>(() => Samples.BytesOf(_ledger, 4));
    }

    public void Dispose()
    {
        _ledger.Dispose();
        _home.Dispose();
    }

    private FileStored Store(string name, string source, string text) => _ledger.Files.Store(name, source, Samples.Bytes(text), LedgerFolder.Noon);

    /// <summary>Another first byte every time it is read from the beginning.</summary>
    private sealed class ShiftingStream(byte[] bytes) : MemoryStream(bytes)
    {
        private readonly byte[] _bytes = bytes;

        public override long Position
        {
            get => base.Position;
            set
            {
                _bytes[0]++;
                base.Position = value;
            }
        }
    }
}
