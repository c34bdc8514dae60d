using DailyAdjust.Ledger;

namespace DailyAdjust.Service.Home;

/// <summary>What a failure of the disk is called, for the log and the sheet.</summary>
internal static class DiskTrouble
{
    /// <summary>Whether nothing more may be written.</summary>
    public static bool IsFailed(Exception failure) => failure is DiskFailedException or LedgerException { Trouble: LedgerTrouble.Io };

    /// <summary>Whether its message says enough; anything else comes with its trace.</summary>
    public static bool SpeaksForItself(Exception failure) => failure is LedgerException or WrongInputException or IOException or UnauthorizedAccessException or InvalidDataException;

    /// <summary>A plain sentence, and what to do.</summary>
    public static string InWords(Exception failure) => failure switch
    {
        LedgerException or DiskFailedException => failure.Message,
        UnauthorizedAccessException => $"No right to write or open a file ({Bare(failure)}). Check the rights of the file and its folder.",
        IOException when DiskError.IsFull(failure) => $"No room on the disk ({Bare(failure)}). Free some space; nothing was lost.",
        IOException when DiskError.IsReadOnly(failure) => $"The disk may only be read ({Bare(failure)}). Make it one that may be written to.",
        IOException when DiskError.IsExhausted(failure) => $"Too many files are open at once ({Bare(failure)}). Raise the limit of the service, or close what else runs.",
        _ => failure.Message,
    };

    private static string Bare(Exception failure) => failure.Message.TrimEnd('.');
}
