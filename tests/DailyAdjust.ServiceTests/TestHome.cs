using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests;

/// <summary>A home folder of one test, deleted after it.</summary>
public sealed class TestHome : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("dailyadjust-test-").FullName;

    public HomeFolder Home => new(Path);

    /// <summary>An empty site folder with its inbox.</summary>
    public SiteFolder EmptySite(string name = "course")
    {
        var site = Home.Site(name);
        Directory.CreateDirectory(site.Inbox);
        return site;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
