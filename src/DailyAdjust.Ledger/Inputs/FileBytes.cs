namespace DailyAdjust.Ledger.Inputs;

/// <summary>A stored file's bytes from an offset on, one piece in memory at a time; forward only. Valid while the ledger is open.</summary>
internal sealed class FileBytes : Stream
{
    private readonly LedgerDb _db;
    private readonly List<Piece> _pieces;
    private readonly long _length;
    private long _at;
    private int _next;
    private byte[] _current = [];
    private int _inCurrent;

    public FileBytes(LedgerDb db, long seq, long length, long from)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(from);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(from, length);
        _db = db;
        _length = length;
        _at = from;

        // A file's own pieces begin where its base ends, so the pieces of the whole chain, in order, are the file.
        _pieces = db.Query(
            """
            WITH RECURSIVE chain (seq, base_seq) AS (
                SELECT seq, base_seq FROM file WHERE seq = $seq
                UNION ALL
                SELECT f.seq, f.base_seq FROM file AS f JOIN chain AS c ON f.seq = c.base_seq)
            SELECT k.id, k.offset, k.length FROM chain JOIN file_chunk AS k ON k.seq = chain.seq
            WHERE k.offset + k.length > $from ORDER BY k.offset
            """,
            r => new Piece(r.GetInt64(0), r.GetInt64(1), r.GetInt32(2)),
            ("$seq", seq),
            ("$from", from));
    }

    public override bool CanRead => true;

    public override bool CanSeek => false;

    public override bool CanWrite => false;

    public override long Length => _length;

    public override long Position
    {
        get => _at;
        set => throw new NotSupportedException();
    }

    public override int Read(byte[] buffer, int offset, int count) => Read(buffer.AsSpan(offset, count));

    public override int Read(Span<byte> buffer)
    {
        if (_inCurrent == _current.Length)
        {
            if (_next == _pieces.Count)
            {
                return 0;
            }

            var piece = _pieces[_next++];
            var packed = _db.First("SELECT body FROM file_chunk WHERE id = $id", r => (byte[])r[0], ("$id", piece.Id)) ?? [];
            _current = Packed.Unpack(packed, piece.Length);
            _inCurrent = (int)(_at - piece.Offset);
        }

        var count = Math.Min(buffer.Length, _current.Length - _inCurrent);
        _current.AsSpan(_inCurrent, count).CopyTo(buffer);
        _inCurrent += count;
        _at += count;
        return count;
    }

    public override void Flush()
    {
    }

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    private readonly record struct Piece(long Id, long Offset, int Length);
}
