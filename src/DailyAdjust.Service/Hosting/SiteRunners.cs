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

    /// <summary>Only this site; null = all of them.</summary>
    public string? Only { get; init; }

    /// <summary>In ordinal order of their names.</summary>
    public IReadOnlyList<SiteRunner> All()
    {
        lock (_guard)
        {
            var sites = home.Sites().Where(site => Only is null || string.Equals(site.Name, Only, StringComparison.Ordinal)).ToList();
            foreach (var site in sites.Where(site => !_runners.ContainsKey(site.Name)))
            {
                log.LogInformation("{Site}: watching {Inbox}", site.Name, site.Inbox);
                _runners.Add(site.Name, new SiteRunner(site, options, time, log));
            }

            return [.. sites.Select(site => _runners[site.Name])];
        }
    }

    public void Dispose()
    {
        foreach (var runner in _runners.Values)
        {
            runner.Dispose();
        }
    }
}
