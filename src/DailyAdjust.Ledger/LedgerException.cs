namespace DailyAdjust.Ledger;

/// <summary>What kept the ledger from doing its work, as far as it decides what to do next.</summary>
public enum LedgerTrouble
{
    /// <summary>No room on the disk: hold and try again.</summary>
    Full,

    /// <summary>No right to the file or its folder, a read-only disk, no free file handle: hold and try again.</summary>
    Denied,

    /// <summary>Another process writes, or reads for too long: try again.</summary>
    Busy,

    /// <summary>The disk failed: write nothing more, check the ledger at the next start.</summary>
    Io,

    /// <summary>The file is damaged, or is no ledger: restore a backup.</summary>
    Corrupt,

    /// <summary>A newer program wrote it: use that one.</summary>
    NewerSchema,

    /// <summary>There is no ledger there yet.</summary>
    Missing,

    /// <summary>There was one, and it is gone or empty: put it back, or restore a backup.</summary>
    Lost,
}

/// <summary>The ledger could not do what was asked; nothing of it was kept. The message is a plain sentence for a person.</summary>
public sealed class LedgerException : Exception
{
    public LedgerException(LedgerTrouble trouble, string message, Exception? inner = null)
        : base(message, inner) => Trouble = trouble;

    public LedgerTrouble Trouble { get; }
}
