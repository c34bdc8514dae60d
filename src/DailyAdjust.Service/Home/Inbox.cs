using System.Text;

namespace DailyAdjust.Service.Home;

/// <summary>A file that lies whole in the inbox.</summary>
public sealed record InboxFile(string Name, string Path);

/// <summary>What a look into the inbox found.</summary>
/// <param name="Ready">Files to take, in ordinal order of their names.</param>
/// <param name="Waiting">Files that may still be growing.</param>
/// <param name="Ignored">What is not a file, and what lies there again, each named once: plain sentences.</param>
/// <param name="Trouble">A clause: "is not there"; null = all is well. An alarm, never "no news".</param>
public sealed record InboxLook(IReadOnlyList<InboxFile> Ready, int Waiting, IReadOnlyList<string> Ignored, string? Trouble);

/// <summary>
/// The folder into which people and stations drop files. It is polled: watchers miss files on network shares and half-written ones.
/// A file is taken when its size and time stood still over two looks, or when it is older than the settle time. It may be a share: a look waits a
/// few seconds at most.
/// </summary>
public sealed class Inbox(SiteFolder folder, TimeProvider time)
{
    /// <summary>How the name of the note beside a file ends, that says why it, or a row of it, was not used.</summary>
    internal const string WhyEnding = ".why.txt";

    private readonly StillFiles _still = new(time);
    private readonly TakenWatch _watch = new(folder, time);
    private readonly PatientListing<Entry> _listing = new();
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> _troubles = new(StringComparer.Ordinal);
    private bool _hadOwnFolders;

    /// <summary>Files that lie there and cannot be taken, a sentence each: what the sheet has to say as long as it is so.</summary>
    public IReadOnlyList<string> Notices => [.. _troubles.Values];

    public InboxLook Look()
    {
        var (entries, trouble) = _listing.Look(List, SourceFolder.Patience);
        if (trouble is not null)
        {
            return new([], 0, [], trouble);
        }

        var ready = new List<InboxFile>();
        var ignored = new List<string>(_watch.BroughtBack());
        _still.BeginLook();
        foreach (var entry in entries.Where(e => !e.IsOwnFolder))
        {
            if (entry.IsNameless)
            {
                if (Leave(new(entry.Name, entry.Path), "its name is not in UTF-8, and cannot be opened by it. Rename it.") is { } news)
                {
                    ignored.Add(news);
                }
            }
            else if (entry.State is null && !entry.IsLink)
            {
                if (_told.Add(entry.Name))
                {
                    ignored.Add($"{entry.Name} is a folder: only files are taken from the inbox itself.");
                }
            }
            else if (entry.IsLink || _still.LiesStill(entry.Name, entry.State!.Value))
            {
                ready.Add(new(entry.Name, entry.Path));
            }
        }

        foreach (var gone in _troubles.Keys.Except(entries.Select(e => e.Name), StringComparer.Ordinal).ToList())
        {
            _troubles.Remove(gone);
        }

        return new(ready, _still.Waiting, ignored, WithoutOwnFolders(entries));
    }

    /// <summary>Whether it was left there at an earlier look: what was said of it then is not said again.</summary>
    public bool IsLeft(InboxFile file) => _troubles.ContainsKey(file.Name);

    /// <summary>Something in the inbox that cannot be taken and stays where it is.</summary>
    /// <returns>The sentence, where it is news.</returns>
    public string? Leave(InboxFile file, string why)
    {
        var sentence = $"{file.Name} is left in the inbox: {why}";
        var isNews = !_troubles.TryGetValue(file.Name, out var before) || !string.Equals(before, sentence, StringComparison.Ordinal);
        _troubles[file.Name] = sentence;
        return isNews ? sentence : null;
    }

    /// <summary>After the ledger has it; rows that could not be used are listed beside it, before it goes there itself.</summary>
    /// <param name="file">The file.</param>
    /// <param name="problems">One line each.</param>
    /// <param name="read">What was read; null = nobody asks.</param>
    /// <param name="before">Told under which name it is about to lie there.</param>
    /// <returns>Its name there; null = it is not what was read, and lies in the inbox again.</returns>
    public string? MoveToTaken(InboxFile file, IReadOnlyList<string> problems, FileState? read = null, Action<string>? before = null) =>
        Move(file, folder.Taken, read, isTaken: true, name =>
        {
            if (problems.Count > 0)
            {
                Explain(folder, name, problems);
            }

            before?.Invoke(name);
        });

    /// <summary>Lists rows of a file that was taken, or read in place, and that could not be used.</summary>
    public static void Explain(SiteFolder site, string name, IReadOnlyList<string> problems) =>
        AtomicFile.Write(Path.Combine(site.Taken, name + WhyEnding), WhyText($"{name} was taken; look at these rows.", problems));

    /// <summary>Moves it to refused/, where every problem lies before it does itself.</summary>
    /// <inheritdoc cref="MoveToTaken"/>
    public string? MoveToRefused(InboxFile file, IReadOnlyList<string> problems, FileState? read = null, Action<string>? before = null) => Move(file, folder.Refused, read, isTaken: false, name =>
    {
        AtomicFile.Write(Path.Combine(folder.Refused, name + WhyEnding), WhyText($"{file.Name} was not taken. Nothing of it was used.", problems));
        before?.Invoke(name);
    });

    /// <summary>Keeps a copy of a file that a person named and that could not be used, with every problem beside it.</summary>
    /// <param name="site">The site.</param>
    /// <param name="name">The file's name.</param>
    /// <param name="bytes">Its bytes; null = too large to copy.</param>
    /// <param name="problems">One line each.</param>
    public static void KeepRefused(SiteFolder site, string name, byte[]? bytes, IReadOnlyList<string> problems)
    {
        // Another file of that name may lie there already, refused from the inbox: it has no other copy.
        var kept = bytes is null || IsKept(site, name, bytes) ? name : AtomicFile.WriteInto(site.Refused, name, bytes);
        AtomicFile.Write(Path.Combine(site.Refused, kept + WhyEnding), WhyText($"{name} was not taken. Nothing of it was used.", problems));
    }

    /// <summary>
    /// Puts a file into the inbox that lies whole from the first moment: written under a hidden name, its time put back by the settle
    /// time (so that the next look takes it), and then renamed. Never over another file.
    /// </summary>
    /// <returns>False = something of that name lies there already.</returns>
    /// <exception cref="DirectoryNotFoundException">The inbox is gone.</exception>
    public static bool PutWhole(SiteFolder site, string name, byte[] bytes, TimeProvider time)
    {
        if (!Directory.Exists(site.Inbox))
        {
            throw new DirectoryNotFoundException($"{site.Inbox} is gone.");
        }

        var target = Path.Combine(site.Inbox, name);
        if (Path.Exists(target))
        {
            return false;
        }

        var hidden = Path.Combine(site.Inbox, $".{name}.pulled");
        try
        {
            AtomicFile.Write(hidden, bytes);
            File.SetLastWriteTimeUtc(hidden, time.GetUtcNow().UtcDateTime - StillFiles.SettleTime - TimeSpan.FromSeconds(1));
            File.Move(hidden, target, overwrite: false);
            return true;
        }
        catch (IOException) when (Path.Exists(target))
        {
            return false; // somebody else took the name in between
        }
        finally
        {
            File.Delete(hidden);
        }
    }

    /// <summary>Deletes taken files that have been kept long enough; their bytes stay in the ledger.</summary>
    public void Tidy(TimeSpan keep)
    {
        if (!Directory.Exists(folder.Taken))
        {
            return;
        }

        var before = time.GetUtcNow().UtcDateTime - keep;
        foreach (var file in new DirectoryInfo(folder.Taken).EnumerateFiles().Where(f => f.LastWriteTimeUtc < before))
        {
            file.Delete();
        }
    }

    private static bool IsKept(SiteFolder site, string name, byte[] bytes)
    {
        var file = new FileInfo(Path.Combine(site.Refused, name));
        return file.Exists && file.Length == bytes.Length && file.LinkTarget is null && File.ReadAllBytes(file.FullName).AsSpan().SequenceEqual(bytes);
    }

    private static string WhyText(string head, IReadOnlyList<string> problems)
    {
        var text = new StringBuilder(head).Append("\n\n");
        foreach (var problem in problems)
        {
            text.Append(problem).Append('\n');
        }

        return text.Append("\nPut it right and drop it into the inbox again.\n").ToString();
    }

    /// <summary>
    /// What lies there under a name of its own, in ordinal order; and first, whatever went on growing after it was taken is put back.
    /// </summary>
    private IReadOnlyList<Entry> List()
    {
        _watch.BringBack();
        return
        [
            .. new DirectoryInfo(folder.Inbox).EnumerateFileSystemInfos()
                .Where(entry => !entry.Name.StartsWith('.'))
                .OrderBy(entry => entry.Name, StringComparer.Ordinal)
                .Select(entry => entry.LinkTarget is not null ? new Entry(entry.Name, entry.FullName, IsLink: true, null)
                    : entry is not FileInfo file ? new(entry.Name, entry.FullName, IsLink: false, null)
                    : FileState.Of(file) is { } state ? new(entry.Name, entry.FullName, IsLink: false, state)
                    : file.Name.Contains('\uFFFD', StringComparison.Ordinal) ? new(entry.Name, entry.FullName, IsLink: false, null) { IsNameless = true }
                    : null)
                .OfType<Entry>(),
        ];
    }

    /// <summary>An unmounted share leaves an empty folder where it was: it lacks what this service had put there.</summary>
    private string? WithoutOwnFolders(IReadOnlyList<Entry> entries)
    {
        var has = entries.Any(e => e.IsOwnFolder);
        _hadOwnFolders |= has;
        return _hadOwnFolders && !has ? "has lost its folders taken and refused (if it is a share: it is not mounted)" : null;
    }

    private string? Move(InboxFile file, string into, FileState? read, bool isTaken, Action<string> before)
    {
        var name = AtomicFile.MoveInto(file.Path, into, before);
        _hadOwnFolders = true;
        _troubles.Remove(file.Name);
        var path = Path.Combine(into, name);
        var moved = FileState.Of(new FileInfo(path));
        if (isTaken)
        {
            Touch(path);
        }

        if (read is { } stood)
        {
            var now = FileState.Of(new FileInfo(path));
            if (moved != stood || now?.Length != stood.Length)
            {
                // It grew, or another was put in its place, while it was being read: nobody has read what was moved.
                AtomicFile.MoveInto(path, folder.Inbox);
                File.Delete(path + WhyEnding);
                return null;
            }

            _watch.Add(path, now.Value);
        }

        return name;
    }

    /// <summary>The time of a taken file is that of the taking: it is kept from then on.</summary>
    private void Touch(string path)
    {
        try
        {
            File.SetLastWriteTimeUtc(path, time.GetUtcNow().UtcDateTime);
        }
        catch (UnauthorizedAccessException)
        {
            // Somebody else's file: it is then kept from the time that it brought along.
        }
    }

    /// <param name="State">Null = a folder, or a link.</param>
    private sealed record Entry(string Name, string Path, bool IsLink, FileState? State)
    {
        /// <summary>Its name's bytes are not UTF-8, and .NET knows no way to it.</summary>
        public bool IsNameless { get; init; }

        public bool IsOwnFolder => State is null && !IsLink && Name is "taken" or "refused";
    }
}
