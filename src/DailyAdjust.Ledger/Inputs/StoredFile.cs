namespace DailyAdjust.Ledger.Inputs;

public enum FileOutcome
{
    /// <summary>Never seen before: read it whole.</summary>
    New,

    /// <summary>These bytes of this source are here already: nothing was changed.</summary>
    AlreadyKnown,

    /// <summary>Begins with the bytes of an earlier file of its source: read it from <see cref="FileStored.From"/> on.</summary>
    Grew,
}

/// <summary>What became of a file that was given to the ledger.</summary>
/// <param name="Seq">Its input number (of the earlier one when already known).</param>
/// <param name="Outcome">Whether there is anything to read.</param>
/// <param name="From">Offset in bytes from which on it is new; its length when already known.</param>
/// <param name="BaseSeq">The file of the same source that it begins with; null unless it grew.</param>
public sealed record FileStored(long Seq, FileOutcome Outcome, long From, long? BaseSeq);

/// <summary>A file as the ledger knows it.</summary>
/// <param name="Seq">Its input number.</param>
/// <param name="Name">The name under which it came.</param>
/// <param name="Source">The weather station, or what else the file is.</param>
/// <param name="Sha">SHA-256, lower-case hexadecimals.</param>
/// <param name="Length">Bytes.</param>
/// <param name="BaseSeq">The file that it begins with (of whatever source); null = none.</param>
/// <param name="BaseLength">Bytes of that one.</param>
/// <param name="At">When it arrived, UTC.</param>
public sealed record StoredFile(long Seq, string Name, string Source, string Sha, long Length, long? BaseSeq, long BaseLength, DateTimeOffset At);

/// <summary>What came of reading a file.</summary>
/// <param name="Seq">The file's input number.</param>
/// <param name="MapSha">Hash of the column map that it was read with; empty for files without one.</param>
/// <param name="Read">Rows that became readings or entries.</param>
/// <param name="Aside">Rows with a value that was set aside.</param>
/// <param name="Refused">Rows that could not be read.</param>
/// <param name="Problems">Text for a person; empty = none.</param>
public sealed record FileRead(long Seq, string MapSha, long Read, long Aside, long Refused, string Problems);
