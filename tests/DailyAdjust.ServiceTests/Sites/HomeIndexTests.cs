using System.Text.RegularExpressions;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace DailyAdjust.ServiceTests.Sites;

/// <summary>The page over all sites, through the real program.</summary>
public sealed class HomeIndexTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Two_sites_of_one_home_stand_by_urgency_and_every_link_leads_to_a_file()
    {
        var tamarack = ExampleSite.TakenIn(_home);
        WithoutWeather("alder", "Alder Hill");
        Morning("2026-06-15", "--site", "tamarack");
        Morning("2026-06-16");
        var page = Page();
        Assert.Equal(["Alder Hill", "Tamarack Flats Municipal"], Sites(page));
        Assert.Contains("<p class=\"lead\">Open 1 box at 1 of 2 sites.</p>", page, StringComparison.Ordinal);
        Assert.Contains("<b>No sound advice today:</b>", page, StringComparison.Ordinal);
        Assert.Contains("Open 1 box: change 1, before 13:00.", page, StringComparison.Ordinal);
        Assert.Contains("Tamarack Flats Municipal: round, before 13:00", page, StringComparison.Ordinal);
        Assert.Equal(Dials(Read(Path.Combine(tamarack.ReportFolder(new DateOnly(2026, 6, 16)), "report.html"))), Dials(page));
        Assert.Single(Dials(page));
        var links = Links(page);
        Assert.Equal(["2026-06-15", "2026-06-16", "season-2026.html", "week-2026-06-08.html"], links.Where(l => l.StartsWith("sites/tamarack/", StringComparison.Ordinal)).Select(l => l.Split('/')[3]).Distinct().Order(StringComparer.Ordinal));
        Assert.All(links, link => Assert.True(File.Exists(Path.Combine(_home.Path, link)), link));

        // The next morning of one of them: the other has no sheet for that day, and comes first though its name does not.
        File.Delete(Path.Combine(tamarack.ReportFolder(new DateOnly(2026, 6, 15)), "round.csv"));
        Morning("2026-06-17", "--site", "alder");
        page = Page();
        Assert.Equal(["Tamarack Flats Municipal", "Alder Hill"], Sites(page));
        Assert.Contains("None of Wed 17 June yet; it is due at 05:00. The newest is of Tue 16 June", page, StringComparison.Ordinal);
        Assert.DoesNotContain("tick when done", page, StringComparison.Ordinal);
        Assert.All(Links(page), link => Assert.True(File.Exists(Path.Combine(_home.Path, link)), link));
    }

    [Fact]
    public void A_later_issue_and_a_power_loss_are_seen_at_once()
    {
        ExampleSite.TakenIn(_home);
        Morning("2026-06-16");
        var log = RunningProgram.Run("log", "power", "C1", "--date", "2026-06-16", "--time", "01:10", "--until", "03:40", "--home", _home.Path);
        Assert.True(log.ExitCode == 0, log.ToString());
        Morning("2026-06-16");
        var page = Page();
        Assert.Contains("Sheet 2026-06-16/2</a>", page, StringComparison.Ordinal);
        Assert.Contains("<b>Verify these boxes: they lost power:</b> C1 (left of the third tee).", page, StringComparison.Ordinal);
        Assert.Contains("Tue 16 Jun</a> issue 2, ", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_page_that_cannot_be_written_stops_no_sheet_and_is_logged()
    {
        var site = ExampleSite.TakenIn(_home);
        Directory.CreateDirectory(Path.Combine(_home.Home.IndexFile, "in the way"));
        Morning("2026-06-16");
        Assert.True(File.Exists(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 16)), "report.html")));
        Assert.Contains("could not be written", string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Select(File.ReadAllText)), StringComparison.Ordinal);
    }

    [Fact]
    public void It_is_written_only_where_its_bytes_change_and_a_damaged_ledger_is_said()
    {
        ExampleSite.TakenIn(_home);
        Morning("2026-06-16");
        var before = DateTime.UtcNow.AddDays(-1);
        File.SetLastWriteTimeUtc(_home.Home.IndexFile, before);
        var index = new HomeIndex(_home.Home, NullLogger.Instance);
        index.Write();
        Assert.Equal(before, File.GetLastWriteTimeUtc(_home.Home.IndexFile), TimeSpan.FromSeconds(1));

        var damaged = WithoutWeather("b-damaged", "Damaged");
        File.WriteAllText(damaged.LedgerFile, "this is no ledger, and it is long enough to be looked at as if it were one");
        index.Write();
        Assert.Equal(["b-damaged", "Tamarack Flats Municipal"], Sites(Page()));
        Assert.Contains("Its records cannot be read: ", Page(), StringComparison.Ordinal);
        Assert.Contains("Open 1 box: change 1", Page(), StringComparison.Ordinal);
        Assert.Equal(["index.html", "logs", "sites"], Directory.GetFileSystemEntries(_home.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    private void Morning(string date, params string[] more)
    {
        var result = RunningProgram.Run(["morning", "--home", _home.Path, "--date", date, .. more]);
        Assert.True(result.ExitCode == 0, result.ToString());
    }

    /// <summary>The page as it reads, its character references resolved.</summary>
    private string Page() => Read(_home.Home.IndexFile);

    private static string Read(string file) => System.Net.WebUtility.HtmlDecode(File.ReadAllText(file)).Replace('\u00a0', ' ');

    private static IReadOnlyList<string> Dials(string page) => [.. Regex.Matches(page, "<span class=\"numbers\">.*?</span>").Select(m => m.Value)];

    private static IReadOnlyList<string> Sites(string page) => [.. Regex.Matches(page, "<article class=\"stop site\">\\s*<header><h3>([^<]*)</h3>").Select(m => m.Groups[1].Value)];

    private static IReadOnlyList<string> Links(string page) => [.. Regex.Matches(page, "<a href=\"([^\"]*)\"").Select(m => m.Groups[1].Value)];

    private SiteFolder WithoutWeather(string id, string name)
    {
        var site = _home.EmptySite(id);
        var yaml = File.ReadAllText(Path.Combine(ExampleSite.Folder, "site", "site.yaml"));
        File.WriteAllText(site.SiteFile, yaml.Replace("Tamarack Flats Municipal", name, StringComparison.Ordinal));
        File.Copy(Path.Combine(ExampleSite.Folder, "site", "stations.csv"), site.StationsFile);
        return site;
    }
}
