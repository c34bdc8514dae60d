namespace DailyAdjust.Service.Hosting;

/// <summary>Keeps a failure that repeats itself at every look from being told at every look.</summary>
internal sealed class ToldOnce
{
    private readonly Dictionary<string, string> _told = new(StringComparer.Ordinal);
    private readonly Lock _guard = new();

    /// <summary>Whether a site's failure is another than the one told last.</summary>
    public bool IsNews(string site, string failure)
    {
        lock (_guard)
        {
            var isNews = !_told.TryGetValue(site, out var before) || !string.Equals(before, failure, StringComparison.Ordinal);
            _told[site] = failure;
            return isNews;
        }
    }

    /// <summary>Whether a site had failed and works again.</summary>
    public bool Recovered(string site)
    {
        lock (_guard)
        {
            return _told.Remove(site);
        }
    }
}
