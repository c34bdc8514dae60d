namespace DailyAdjust.Service.Home;

/// <summary>
/// A copy that stalled looks like a file that lies whole, and goes on under its new name after it was taken. Files that were taken or refused
/// lately are looked at again, and put back into the inbox when they have changed: what is known of them already adds nothing.
/// </summary>
/// <param name="folder">The site.</param>
/// <param name="time">The clock.</param>
internal sealed class TakenWatch(SiteFolder folder, TimeProvider time)
{
    private static readonly TimeSpan Lately = TimeSpan.FromHours(24);

    private readonly List<(string Path, FileState State, long Since)> _lately = [];
    private readonly List<string> _broughtBack = [];

    /// <param name="path">Where it lies now.</param>
    /// <param name="state">As it was read.</param>
    public void Add(string path, FileState state) => _lately.Add((path, state, time.GetTimestamp()));

    /// <summary>Sentences about files that were put back since this was asked last.</summary>
    public IReadOnlyList<string> BroughtBack()
    {
        var sentences = _broughtBack.ToList();
        _broughtBack.Clear();
        return sentences;
    }

    /// <summary>Puts back what has changed.</summary>
    public void BringBack()
    {
        _lately.RemoveAll(file => time.GetElapsedTime(file.Since) > Lately || FileState.Of(new FileInfo(file.Path)) is null);
        foreach (var file in _lately.FindAll(file => FileState.Of(new FileInfo(file.Path)) is { } now && now != file.State))
        {
            _lately.Remove(file);
            var name = AtomicFile.MoveInto(file.Path, folder.Inbox);
            File.Delete(file.Path + Inbox.WhyEnding);
            _broughtBack.Add($"{name} was still being written to after it was taken: it is taken again.");
        }
    }
}
