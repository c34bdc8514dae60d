using DailyAdjust.Ledger;

namespace DailyAdjust.Service.Home;

/// <summary>The disk failed under something that was being written: nothing more may be written until somebody has looked after it.</summary>
public sealed class DiskFailedException : IOException
{
    private DiskFailedException(string path, IOException inner)
        : base($"The disk failed under {path} ({inner.Message}). Look after the disk before anything is written again.", inner)
    {
    }

    /// <summary>Whether a failure is to become one of these.</summary>
    public static bool Means(IOException failure) => failure is not DiskFailedException && DiskError.IsFailed(failure);

    /// <summary>The failure under a path; from now on no ledger of this process is tidied up either.</summary>
    public static DiskFailedException Under(string path, IOException failure)
    {
        OnDisk.TakeAsFailed();
        return new DiskFailedException(path, failure);
    }
}
