namespace DailyAdjust.Service.Home;

/// <summary>Tells files that lie whole from files that may still be growing: by two looks that saw the same, or by their age.</summary>
public sealed class StillFiles(TimeProvider time)
{
    /// <summary>A file that nobody wrote to for so long lies whole.</summary>
    public static readonly TimeSpan SettleTime = TimeSpan.FromSeconds(60);

    private Dictionary<string, FileState> _before = new(StringComparer.Ordinal);
    private Dictionary<string, FileState> _now = new(StringComparer.Ordinal);

    /// <summary>How many files of this look may still be growing.</summary>
    public int Waiting => _now.Count;

    /// <summary>To be called at the beginning of each look.</summary>
    public void BeginLook() => (_before, _now) = (_now, new(StringComparer.Ordinal));

    /// <summary>To be asked once per look and file.</summary>
    public bool LiesStill(string name, FileState state)
    {
        if (state.Modified < time.GetUtcNow().UtcDateTime - SettleTime || (_before.TryGetValue(name, out var before) && before == state))
        {
            return true;
        }

        _now[name] = state;
        return false;
    }
}

/// <summary>By which a file is seen to have changed.</summary>
/// <param name="Length">Bytes.</param>
/// <param name="Modified">UTC.</param>
public readonly record struct FileState(long Length, DateTime Modified)
{
    /// <summary>As it is now; null = it is gone.</summary>
    public static FileState? Of(FileInfo file)
    {
        file.Refresh();
        return file.Exists ? new(file.Length, file.LastWriteTimeUtc) : null;
    }
}
