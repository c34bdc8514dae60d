using DailyAdjust.Files.Readings;

namespace DailyAdjust.Service.Home;

/// <summary>A file of a folder that is read in place.</summary>
public sealed record FolderFile(string Name, string Path, FileState State);

/// <summary>What a look into such a folder found.</summary>
/// <param name="Ready">Files that changed since they were last read, and lie still; in ordinal order of their names.</param>
/// <param name="Waiting">Files that may still be growing.</param>
/// <param name="Trouble">A clause: "is not there"; null = all is well.</param>
public sealed record FolderLook(IReadOnlyList<FolderFile> Ready, int Waiting, string? Trouble);

/// <summary>
/// A folder that belongs to somebody else (a logger's own): its files are read where they lie, and nothing in it is ever moved,
/// changed or deleted. It may be a share that goes away, or that does not answer: a look waits a few seconds at most.
/// </summary>
/// <param name="path">The folder.</param>
/// <param name="pattern">Which of its files; others are not this source's business.</param>
/// <param name="time">The clock.</param>
public sealed class SourceFolder(string path, string pattern, TimeProvider time)
{
    /// <summary>How long one answer of the folder, or of a file in it, is waited for.</summary>
    public static TimeSpan Patience { get; } = TimeSpan.FromSeconds(5);

    /// <summary>A file that never comes to rest is read after so long: its last row may be cut, and comes whole the next time.</summary>
    private static readonly TimeSpan LongestGrowth = TimeSpan.FromMinutes(5);

    private readonly StillFiles _still = new(time);
    private readonly Dictionary<string, long> _growing = new(StringComparer.Ordinal);
    private readonly Dictionary<string, FileState> _read = new(StringComparer.Ordinal);
    private readonly PatientListing<FolderFile> _listing = new();

    public string Path { get; } = path;

    /// <param name="isKnown">Whether the ledger has a file as it stands: asked once per file and state, so that a restart reads nothing twice.</param>
    public FolderLook Look(Func<FolderFile, bool> isKnown)
    {
        var (files, trouble) = _listing.Look(List, Patience);
        if (trouble is not null)
        {
            return new([], 0, trouble);
        }

        return files.Count == 0 ? new([], 0, $"holds no file {pattern}") : Sorted(files, isKnown);
    }

    /// <summary>Remembers that a file was read, or refused, as it then stood.</summary>
    public void SetRead(FolderFile file)
    {
        _read[file.Name] = file.State;
        _growing.Remove(file.Name);
    }

    private FolderLook Sorted(IReadOnlyList<FolderFile> files, Func<FolderFile, bool> isKnown)
    {
        var ready = new List<FolderFile>();
        _still.BeginLook();
        foreach (var file in files.Where(f => !_read.TryGetValue(f.Name, out var read) || read != f.State))
        {
            if (isKnown(file))
            {
                SetRead(file);
            }
            else if (_still.LiesStill(file.Name, file.State) || NeverRests(file.Name))
            {
                ready.Add(file);
            }
        }

        return new(ready, _still.Waiting, null);
    }

    private bool NeverRests(string name)
    {
        if (_growing.TryGetValue(name, out var since))
        {
            return time.GetElapsedTime(since) >= LongestGrowth;
        }

        _growing[name] = time.GetTimestamp();
        return false;
    }

    private IReadOnlyList<FolderFile> List() =>
    [
        .. new DirectoryInfo(Path).EnumerateFiles()
            .Where(file => !file.Name.StartsWith('.') && ReadingsFile.Fits(pattern, file.Name))
            .OrderBy(file => file.Name, StringComparer.Ordinal)
            .Select(file => FileState.Of(file) is { } state ? new FolderFile(file.Name, file.FullName, state) : null)
            .OfType<FolderFile>(),
    ];
}
