using DailyAdjust.Service.Configuration;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging;

namespace DailyAdjust.Service.Hosting;

/// <summary>The sites of the home: a folder that is copied in is run from the next look on, one that is taken away no more.</summary>
public sealed class SiteRunners(HomeFolder home, ServiceOptions options, TimeProvider time, ILogger<SiteRunner> log) : IDisposable
{
    private readonly Dictionary<string, SiteRunner> _runners = new(StringComparer.Ordinal);
    private readonly Lock _guard = new();
    private readonly ToldOnce _told = new();

    /// <summary>Only this site; null = all of them.</summary>
    public string? Only { get; init; }

    /// <summary>In ordinal order of their names; while the home itself cannot be read, those that were there before.</summary>
    public IReadOnlyList<SiteRunner> All()
    {
        lock (_guard)
        {
            try
            {
                return Found();
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                var words = DiskTrouble.InWords(failure);
                if (_told.IsNews(home.SitesFolder, words))
                {
                    log.LogError("{Folder} cannot be read, tried again at every look: {Failure}", home.SitesFolder, words);
                }

                return [.. _runners.OrderBy(r => r.Key, StringComparer.Ordinal).Select(r => r.Value)];
            }
        }
    }

    public void Dispose()
    {
        foreach (var runner in _runners.Values)
        {
            runner.Dispose();
        }
    }

    private SiteRunner[] Found()
    {
        var sites = home.Sites().Where(site => Only is null || string.Equals(site.Name, Only, StringComparison.Ordinal)).ToList();
        foreach (var site in sites.Where(site => !_runners.ContainsKey(site.Name)))
        {
            log.LogInformation("{Site}: watching {Inbox}", site.Name, site.Inbox);
            _runners.Add(site.Name, new SiteRunner(site, options, time, log));
        }

        var there = sites.Select(site => site.Name).ToHashSet(StringComparer.Ordinal);
        foreach (var name in _runners.Keys)
        {
            if (there.Contains(name))
            {
                if (_told.Recovered(name))
                {
                    log.LogInformation("{Site}: its folder is there again", name);
                }
            }
            else if (_told.IsNews(name, "gone"))
            {
                log.LogError("{Site}: its folder is gone, and nothing is done for this course any more. If nobody took it away on purpose, put it back", name);
            }
        }

        if (_told.Recovered(home.SitesFolder))
        {
            log.LogInformation("{Folder} can be read again", home.SitesFolder);
        }

        return [.. sites.Select(site => _runners[site.Name])];
    }
}
