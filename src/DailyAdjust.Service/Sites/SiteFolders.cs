using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Sites;

/// <summary>Changed files of one source's folder.</summary>
public sealed record FolderNews(string SourceId, SourceFolder Folder, IReadOnlyList<FolderFile> Files);

/// <summary>The folders of a site's sources that are read in place.</summary>
/// <param name="site">The site's own folder: a relative path begins there.</param>
/// <param name="options">The largest file.</param>
/// <param name="time">The clock.</param>
/// <param name="log">Tells what was taken and what is in the way.</param>
public sealed class SiteFolders(SiteFolder site, ServiceOptions options, TimeProvider time, ILogger log)
{
    private readonly Dictionary<string, (WeatherSource Source, SourceFolder Folder)> _folders = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, string> _troubles = new(StringComparer.Ordinal);

    /// <summary>What the sheet has to say as long as it is so.</summary>
    public IReadOnlyList<string> Notices => [.. _troubles.Values];

    /// <summary>Files of the last look that may still be growing.</summary>
    public int Waiting { get; private set; }

    /// <summary>One look into every folder; changes nothing.</summary>
    /// <param name="open">Opened to read or to write.</param>
    public IReadOnlyList<FolderNews> Look(OpenSite open)
    {
        var news = new List<FolderNews>();
        Waiting = 0;
        var sources = open.Versions.Count == 0 ? [] : open.Newest.Weather.Sources.Where(source => source.Folder is not null).ToList();
        foreach (var gone in _troubles.Keys.Where(id => !sources.Exists(s => string.Equals(s.Id, id, StringComparison.Ordinal))).ToList())
        {
            _troubles.Remove(gone);
        }

        foreach (var source in sources)
        {
            var folder = FolderOf(source);
            var known = new Lazy<ILookup<string, StoredFile>>(() => open.Ledger.Files.List(source.Id).ToLookup(file => file.Name, StringComparer.Ordinal));
            var look = folder.Look(file => IsKnown(file, known.Value[file.Name]));
            Waiting += look.Waiting;
            Tell(source, folder, look.Trouble);
            if (look.Ready.Count > 0)
            {
                news.Add(new(source.Id, folder, look.Ready));
            }
        }

        return news;
    }

    /// <summary>Takes changed files into the ledger, where what the next sheet has to say about them waits.</summary>
    public void Take(OpenSite open, IReadOnlyList<FolderNews> news, CancellationToken stop)
    {
        foreach (var (sourceId, folder, files) in news)
        {
            if (open.Newest.Weather.Sources.FirstOrDefault(s => string.Equals(s.Id, sourceId, StringComparison.Ordinal)) is not { } source)
            {
                continue;
            }

            foreach (var file in files)
            {
                stop.ThrowIfCancellationRequested();
                Take(open, source, folder, file);
            }
        }
    }

    /// <summary>
    /// A file that the ledger took in this length after it was last written to. By the ledger itself, so that neither a restart nor a
    /// restored ledger is in doubt.
    /// </summary>
    private static bool IsKnown(FolderFile file, IEnumerable<StoredFile> stored) =>
        stored.MaxBy(s => s.Seq) is { } newest && newest.Length == file.State.Length && newest.At.UtcDateTime >= file.State.Modified;

    private void Take(OpenSite open, WeatherSource source, SourceFolder folder, FolderFile file)
    {
        try
        {
            // When it was looked at, not when it was taken: what is written to it from here on is newer.
            var now = time.GetUtcNow();
            using var content = RegularFile.Open(file.Path, options.LargestFileMegabytes * 1_000_000L, patience: SourceFolder.Patience);
            if (content.Trouble == FileTrouble.Vanished)
            {
                return;
            }

            var report = content.File is { } bytes
                ? new FileIntake(open, now).TakeWeather(file.Name, bytes, source, taken => Notice(file, taken))
                : IntakeReport.ForRefused(file.Name, $"{file.Path}: {content.Why}");
            folder.SetRead(file);
            Settle(open, file, report);
        }
        catch (IOException failure) when (!DiskTrouble.IsFailed(failure))
        {
            // It grows, or its share went away: the next look sees it anew.
            log.LogInformation("{Site}: {File} is left for the next look: {Failure}", site.Name, file.Path, failure.Message);
        }
    }

    private void Settle(OpenSite open, FolderFile file, IntakeReport report)
    {
        if (report.Refused)
        {
            Inbox.KeepRefused(site, file.Name, null, report.Problems);
            log.LogWarning("{Site}: {File} refused: {Why}", site.Name, file.Path, report.Problems[0]);
            open.Ledger.Notices.Add($"{file.Path} could not be used: inbox/refused/{file.Name}.why.txt says why.");
            return;
        }

        log.LogInformation("{Site}: {File} read in place as {What}: {Counts}", site.Name, file.Path, report.What, report.Counts);
    }

    /// <summary>The list lies there before the sheet speaks of it: nobody reads the file again after a crash.</summary>
    private string? Notice(FolderFile file, IntakeReport report)
    {
        if (report.Known || report.RowsRefused + report.RowsSetAside == 0)
        {
            return null;
        }

        Inbox.Explain(site, file.Name, report.Problems);
        return FormattableString.Invariant($"{file.Path}: {report.Counts}; inbox/taken/{file.Name}.why.txt lists them.");
    }

    private SourceFolder FolderOf(WeatherSource source)
    {
        if (!_folders.TryGetValue(source.Id, out var known) || !ReferenceEquals(known.Source, source))
        {
            known = (source, new SourceFolder(Path.Combine(site.Path, source.Folder!), source.Files, time));
            _folders[source.Id] = known;
        }

        return known.Folder;
    }

    private void Tell(WeatherSource source, SourceFolder folder, string? trouble)
    {
        var before = _troubles.GetValueOrDefault(source.Id);
        if (trouble is null)
        {
            if (_troubles.Remove(source.Id))
            {
                log.LogInformation("{Site}: the folder {Folder} of {Source} can be read again", site.Name, folder.Path, source.Id);
            }

            return;
        }

        var what = source.IsForecast ? "the forecast" : $"station {source.Id}";
        var sentence = $"The folder {folder.Path} of {what} {trouble}: nothing new comes from it.";
        _troubles[source.Id] = sentence;
        if (!string.Equals(before, sentence, StringComparison.Ordinal))
        {
            log.LogWarning("{Site}: {Notice}", site.Name, sentence);
        }
    }
}
