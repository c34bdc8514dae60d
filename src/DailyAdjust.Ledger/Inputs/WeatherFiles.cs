using System.Security.Cryptography;
using Microsoft.Data.Sqlite;

namespace DailyAdjust.Ledger.Inputs;

/// <summary>
/// The files as they came, weather or other, packed and addressed by hash. A file that begins with the bytes of an earlier
/// one of its source or name is kept as that one and its tail.
/// </summary>
public sealed class WeatherFiles
{
    private const string Columns = "file.seq, name, source, sha, length, base_seq, base_length, input.at";

    /// <summary>Bytes of a piece before packing: bounds memory, and keeps far from SQLite's limit of 1 GB per value.</summary>
    private const int PieceSize = 1 << 20;

    /// <summary>How many earlier files are tried as the beginning of a new one; missing one costs space, nothing else.</summary>
    private const int CandidatesTried = 200;

    private readonly LedgerDb _db;
    private readonly InputOrder _order;

    internal WeatherFiles(LedgerDb db, InputOrder order)
    {
        _db = db;
        _order = order;
    }

    /// <summary>Keeps a file's bytes. The same bytes of the same source twice change nothing.</summary>
    /// <param name="name">The name under which it came, without a folder.</param>
    /// <param name="source">The weather station, or what else the file is ("logbook"); files grow within one source.</param>
    /// <param name="content">Seekable; read twice from its beginning.</param>
    /// <param name="at">When it arrived.</param>
    /// <param name="placed">Told what the file is before its bytes are kept, so that it can be read meanwhile.</param>
    /// <exception cref="IOException">The file changed while it was being read; nothing was kept.</exception>
    public FileStored Store(string name, string source, Stream content, DateTimeOffset at, Action<FileStored>? placed = null) => _db.InOneStep(() =>
    {
        var candidates = Candidates(name, source);
        var hashes = FileHashes.Of(content, candidates.Select(c => c.Length));
        var known = _db.Number("SELECT seq FROM file WHERE sha = $sha AND source = $source", ("$sha", hashes.Whole), ("$source", source));
        if (known != 0)
        {
            return new FileStored(known, FileOutcome.AlreadyKnown, hashes.Length, null);
        }

        var begin = candidates
            .Where(c => hashes.AtMarks.TryGetValue(c.Length, out var sha) && string.Equals(sha, c.Sha, StringComparison.Ordinal))
            .OrderByDescending(c => string.Equals(c.Source, source, StringComparison.Ordinal))
            .ThenByDescending(c => c.Length)
            .FirstOrDefault();
        var seq = _order.Next(InputOrder.File, at);
        _db.Execute(
            """
            INSERT INTO file (seq, sha, name, source, length, base_seq, base_length)
            VALUES ($seq, $sha, $name, $source, $length, $base_seq, $base_length)
            """,
            ("$seq", seq),
            ("$sha", hashes.Whole),
            ("$name", name),
            ("$source", source),
            ("$length", hashes.Length),
            ("$base_seq", begin?.Seq),
            ("$base_length", begin?.Length ?? 0));

        // A beginning that another source brought saves space, but its readings are not this source's.
        var stored = begin is not null && string.Equals(begin.Source, source, StringComparison.Ordinal)
            ? new FileStored(seq, FileOutcome.Grew, begin.Length, begin.Seq)
            : new FileStored(seq, FileOutcome.New, 0, null);
        placed?.Invoke(stored);
        StorePieces(seq, content, begin?.Length ?? 0, hashes.Whole, name);
        return stored;
    });

    /// <inheritdoc cref="Store(string, string, Stream, DateTimeOffset, Action{FileStored})"/>
    public FileStored Store(string name, string source, byte[] content, DateTimeOffset at)
    {
        using var stream = new MemoryStream(content, writable: false);
        return Store(name, source, stream, at);
    }

    /// <summary>The file's bytes from an offset on, piece by piece; not seekable; valid while the ledger is open.</summary>
    /// <exception cref="KeyNotFoundException">No file has this number.</exception>
    public Stream OpenRead(long seq, long from = 0) => new FileBytes(_db, seq, Get(seq).Length, from);

    /// <exception cref="KeyNotFoundException">No file has this number.</exception>
    public StoredFile Get(long seq) =>
        _db.First($"SELECT {Columns} FROM file JOIN input USING (seq) WHERE file.seq = $seq", ToFile, ("$seq", seq))
        ?? throw new KeyNotFoundException(FormattableString.Invariant($"Input {seq} is no file of this ledger."));

    /// <summary>In order of arrival, of one source or (null) of all.</summary>
    public IReadOnlyList<StoredFile> List(string? source = null) => _db.Query(
        $"SELECT {Columns} FROM file JOIN input USING (seq) WHERE $source IS NULL OR source = $source ORDER BY file.seq",
        ToFile,
        ("$source", source));

    /// <summary>Whether these bytes of this source are here.</summary>
    /// <param name="source">The weather station, or what else the file is.</param>
    /// <param name="sha">SHA-256, lower-case hexadecimals.</param>
    public bool Holds(string source, string sha) =>
        _db.Number("SELECT count(*) FROM file WHERE sha = $sha AND source = $source", ("$sha", sha), ("$source", source)) > 0;

    /// <summary>Notes what came of reading a file; a later reading (under another map) takes its place.</summary>
    public void SetRead(FileRead read) => _db.InOneStep(() => _db.Execute(
        """
        INSERT INTO file_read (seq, map_sha, rows_read, rows_aside, rows_refused, problems)
        VALUES ($seq, $map, $read, $aside, $refused, $problems)
        ON CONFLICT (seq) DO UPDATE SET map_sha = excluded.map_sha, rows_read = excluded.rows_read,
            rows_aside = excluded.rows_aside, rows_refused = excluded.rows_refused, problems = excluded.problems
        """,
        ("$seq", read.Seq),
        ("$map", read.MapSha),
        ("$read", read.Read),
        ("$aside", read.Aside),
        ("$refused", read.Refused),
        ("$problems", read.Problems)));

    /// <summary>Null = the file was stored and never read to its end.</summary>
    public FileRead? ReadOf(long seq) => _db.First(
        "SELECT seq, map_sha, rows_read, rows_aside, rows_refused, problems FROM file_read WHERE seq = $seq",
        r => new FileRead(r.GetInt64(0), r.GetString(1), r.GetInt64(2), r.GetInt64(3), r.GetInt64(4), r.GetString(5)),
        ("$seq", seq));

    /// <summary>Files of a source that were never read, or read with another column map; in order of arrival.</summary>
    public IReadOnlyList<StoredFile> NotReadWith(string source, string mapSha) => _db.Query(
        $"""
        SELECT {Columns} FROM file JOIN input USING (seq) LEFT JOIN file_read ON file_read.seq = file.seq
        WHERE source = $source AND file_read.map_sha IS NOT $map ORDER BY file.seq
        """,
        ToFile,
        ("$source", source),
        ("$map", mapSha));

    /// <summary>Files whose stored bytes are no longer those that came.</summary>
    internal IEnumerable<StoredFile> Damaged() => List().Where(f =>
    {
        try
        {
            using var stream = OpenRead(f.Seq);
            return !string.Equals(Convert.ToHexStringLower(SHA256.HashData(stream)), f.Sha, StringComparison.Ordinal);
        }
        catch (InvalidDataException)
        {
            return true;
        }
    });

    private static StoredFile ToFile(SqliteDataReader r) => new(
        r.GetInt64(0),
        r.GetString(1),
        r.GetString(2),
        r.GetString(3),
        r.GetInt64(4),
        r.IsDBNull(5) ? null : r.GetInt64(5),
        r.GetInt64(6),
        Formats.ToInstant(r.GetString(7)));

    private List<StoredFile> Candidates(string name, string source) => _db.Query(
        $"""
        SELECT {Columns} FROM file JOIN input USING (seq)
        WHERE (name = $name OR source = $source) AND length > 0 ORDER BY file.seq DESC LIMIT {CandidatesTried}
        """,
        ToFile,
        ("$name", name),
        ("$source", source));

    private void StorePieces(long seq, Stream content, long from, string sha, string name)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        var buffer = new byte[PieceSize];
        content.Position = 0;
        for (var at = 0L; ;)
        {
            // Bytes of the base are only hashed; pieces begin where it ends.
            var isBase = at < from;
            var most = isBase ? (int)Math.Min(PieceSize, from - at) : PieceSize;
            var count = content.ReadAtLeast(buffer.AsSpan(0, most), most, throwOnEndOfStream: false);
            if (count == 0)
            {
                break;
            }

            hash.AppendData(buffer, 0, count);
            if (!isBase)
            {
                _db.Execute(
                    "INSERT INTO file_chunk (seq, offset, length, body) VALUES ($seq, $offset, $length, $body)",
                    ("$seq", seq),
                    ("$offset", at),
                    ("$length", count),
                    ("$body", Packed.Pack(buffer.AsSpan(0, count))));
            }

            at += count;
        }

        if (!string.Equals(Convert.ToHexStringLower(hash.GetCurrentHash()), sha, StringComparison.Ordinal))
        {
            throw new IOException($"{name} changed while it was being read. It will be read again when it has come to rest.");
        }
    }
}
