using System.Text;

namespace DailyAdjust.Service.Home;

/// <summary>A file that lies whole in the inbox.</summary>
public sealed record InboxFile(string Name, string Path);

/// <summary>What a look into the inbox found.</summary>
/// <param name="Ready">Files to take, in ordinal order of their names.</param>
/// <param name="Waiting">Files that may still be growing.</param>
/// <param name="Ignored">What is not a file, each named once: plain sentences.</param>
public sealed record InboxLook(IReadOnlyList<InboxFile> Ready, int Waiting, IReadOnlyList<string> Ignored);

/// <summary>
/// The folder into which people and stations drop files. It is polled: watchers miss files on network shares and half-written ones.
/// A file is taken when its size and time stood still over two looks, or when it is older than the settle time.
/// </summary>
public sealed class Inbox(SiteFolder folder, TimeProvider time)
{
    private readonly StillFiles _still = new(time);
    private readonly HashSet<string> _told = new(StringComparer.Ordinal);

    /// <exception cref="DirectoryNotFoundException">The inbox is gone (an unmounted share): an alarm, not "no news".</exception>
    public InboxLook Look()
    {
        var ready = new List<InboxFile>();
        var ignored = new List<string>();
        _still.BeginLook();
        foreach (var entry in new DirectoryInfo(folder.Inbox).EnumerateFileSystemInfos().OrderBy(e => e.Name, StringComparer.Ordinal))
        {
            if (entry.Name.StartsWith('.') || IsOwnFolder(entry))
            {
                continue;
            }

            if (entry.LinkTarget is null && entry is not FileInfo)
            {
                TellOnce(ignored, entry.Name, $"{entry.Name} is a folder: only files are taken from the inbox itself.");
            }
            else if (entry.LinkTarget is not null || LiesStill((FileInfo)entry))
            {
                ready.Add(new(entry.Name, entry.FullName));
            }
        }

        return new(ready, _still.Waiting, ignored);
    }

    /// <summary>Something in the inbox that cannot be read as a file and stays where it is.</summary>
    public string? Ignore(InboxFile file, string why)
    {
        var notices = new List<string>();
        TellOnce(notices, file.Name, $"{file.Name} is left alone: {why}");
        return notices.Count > 0 ? notices[0] : null;
    }

    /// <summary>After the ledger has it; rows that could not be used are listed beside it, before it goes there itself.</summary>
    /// <param name="file">The file.</param>
    /// <param name="problems">One line each.</param>
    /// <param name="before">Told under which name it is about to lie there.</param>
    public string MoveToTaken(InboxFile file, IReadOnlyList<string> problems, Action<string>? before = null)
    {
        Touch(file.Path);
        return AtomicFile.MoveInto(file.Path, folder.Taken, name =>
        {
            if (problems.Count > 0)
            {
                Explain(folder, name, problems);
            }

            before?.Invoke(name);
        });
    }

    /// <summary>Lists rows of a file that was taken, or read in place, and that could not be used.</summary>
    public static void Explain(SiteFolder site, string name, IReadOnlyList<string> problems) =>
        AtomicFile.Write(Path.Combine(site.Taken, name + ".why.txt"), WhyText($"{name} was taken; look at these rows.", problems));

    /// <summary>Moves it to refused/, where every problem lies before it does itself.</summary>
    /// <param name="file">The file.</param>
    /// <param name="problems">One line each.</param>
    /// <param name="before">Told under which name it is about to lie there.</param>
    public string MoveToRefused(InboxFile file, IReadOnlyList<string> problems, Action<string>? before = null) => AtomicFile.MoveInto(file.Path, folder.Refused, name =>
    {
        AtomicFile.Write(Path.Combine(folder.Refused, name + ".why.txt"), WhyText($"{file.Name} was not taken. Nothing of it was used.", problems));
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
        AtomicFile.Write(Path.Combine(site.Refused, kept + ".why.txt"), WhyText($"{name} was not taken. Nothing of it was used.", problems));
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

    private static bool IsOwnFolder(FileSystemInfo entry) =>
        entry is DirectoryInfo && entry.LinkTarget is null && entry.Name is "taken" or "refused";

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

    private bool LiesStill(FileInfo file) => FileState.Of(file) is { } state && _still.LiesStill(file.Name, state);

    private void TellOnce(List<string> notices, string name, string sentence)
    {
        if (_told.Add(name))
        {
            notices.Add(sentence);
        }
    }
}
