using System.Text;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>Somebody edits the description of a running site, and it is wrong, half saved or gone: the last good one holds, log and sheets say so, and the good one is taken when it comes.</summary>
[Trait("Promise", "8")]
public sealed class BadEditTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;
    private readonly MovedClock _clock;
    private int _day = 9;

    public BadEditTests()
    {
        Tool.Need("gcc");
        _site = ExampleSite.TakenIn(_home);
        _clock = new MovedClock(Work);
    }

    private DateTimeOffset Work => new DateTimeOffset(2026, 6, 1, 9, 52, 0, TimeSpan.Zero).AddDays(_day - 1);

    private DateOnly Date => new DateOnly(2026, 6, 1).AddDays(_day - 1);

    public void Dispose()
    {
        _clock.Dispose();
        _home.Dispose();
    }

    [Fact]
    public void A_bad_edit_keeps_the_last_good_description_says_so_and_takes_the_good_one_when_it_comes()
    {
        var good = File.ReadAllText(_site.SiteFile);
        var stations = File.ReadAllText(_site.StationsFile);
        using var service = new Served(_home, _clock.Variables);
        Assert.DoesNotContain("edit of the site's description", NextSheet(), StringComparison.Ordinal);
        (string What, Action Edit)[] edits =
        [
            ("satisfyy", () => Write(good.Replace("satisfy:", "satisfyy:", StringComparison.Ordinal))),
            ("root_depth", () => Write(good.Replace("root_depth: 6 in", "root_depth: 6", StringComparison.Ordinal))),
            ("site.yaml", () => Write(good[..(good.Length / 2)] + "\n  - [")),
            ("site.yaml", () => Write("")),
            ("stations.csv", () => File.Delete(_site.StationsFile)),
            ("stations.csv", () => File.WriteAllText(_site.StationsFile, stations.Replace("greens", "grens", StringComparison.Ordinal))),
        ];
        foreach (var (what, edit) in edits)
        {
            edit();
            var sheet = NextSheet();
            Assert.Contains("An edit of the site's description has errors, so the description of 2026-06-01 still holds.", sheet, StringComparison.Ordinal);
            Assert.Contains(what, sheet, StringComparison.Ordinal);
            Assert.Contains("Green", sheet, StringComparison.OrdinalIgnoreCase);
            Write(good);
            File.WriteAllText(_site.StationsFile, stations);
        }

        var random = new Random(8);
        var cuts = Tried.Times(2, 60);
        for (var i = 0; i < cuts; i++)
        {
            // Saved in pieces, as an editor on a share does: whatever is read of it is either refused, or the whole.
            var bytes = Encoding.UTF8.GetBytes(good.Replace("satisfy: 80 %", "satisfy: 75 %", StringComparison.Ordinal));
            File.WriteAllBytes(_site.SiteFile, bytes[..random.Next(1, bytes.Length - 200)]);
            service.LetItLook(_site);
            Write(good);
            service.LetItLook(_site);
        }

        Assert.DoesNotContain("has errors", NextSheet(), StringComparison.Ordinal);
        Write(good.Replace("name: Tamarack Flats Municipal", "name: Tamarack Hills Municipal", StringComparison.Ordinal));
        service.LetItLook(_site);
        var next = NextSheet();
        Assert.DoesNotContain("has errors", next, StringComparison.Ordinal);
        Assert.StartsWith("Tamarack Hills Municipal", next, StringComparison.Ordinal);
        service.Stop();
        Tried.Held(8, "bad edits of a running site", edits.Length + cuts);
    }

    private void Write(string yaml) => File.WriteAllText(_site.SiteFile, yaml);

    /// <summary>The sheet of the next day.</summary>
    private string NextSheet()
    {
        _day++;
        _clock.Set(Work);
        Served.WaitFor($"the sheet of {Date:yyyy-MM-dd}", () => Served.IsOut(_site, Date));
        return Served.Sheet(_site, Date);
    }
}
