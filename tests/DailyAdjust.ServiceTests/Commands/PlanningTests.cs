using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Base programs, season and door cards of the demo's course, through the real program.</summary>
public sealed class PlanningTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Plan_prints_minutes_and_starts_before_anything_was_taken_in()
    {
        Course();
        var table = RunningProgram.Run("plan", "--home", _home.Path);
        Assert.True(table.ExitCode == 0, table.ToString());
        Assert.Contains("putting green east", table.Output, StringComparison.Ordinal);
        Assert.Contains("local watering rules", table.Output, StringComparison.Ordinal);

        var csv = RunningProgram.Run("plan", "--home", _home.Path, "--format", "csv");
        Assert.StartsWith("controller,program,station,name,area,peak_month,need_mm,present_minutes,exact_minutes,minutes,", csv.Output, StringComparison.Ordinal);
        Assert.Equal(csv.Output, RunningProgram.Run("plan", "--home", _home.Path, "--format", "csv").Output);
        var json = RunningProgram.Run("plan", "--home", _home.Path, "--format", "json");
        Assert.Contains("\"percent_that_fits\":", json.Output, StringComparison.Ordinal);
        Assert.False(File.Exists(_home.Home.Site("course").LedgerFile));
    }

    [Fact]
    public void Season_prints_a_year_with_100_percent_in_the_peak_month()
    {
        Course();
        var csv = RunningProgram.Run("season", "--home", _home.Path, "--format", "csv");
        Assert.True(csv.ExitCode == 0, csv.ToString());
        var rows = csv.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(',')).ToList();
        Assert.All(rows.GroupBy(r => r[0] + r[1]), program =>
        {
            Assert.Equal(12, program.Count());
            Assert.Contains(program, r => r[4] is "100.0000");
            Assert.All(program, r => Assert.Equal("normals", r[7]));
        });
    }

    /// <summary>The demo has one season of weather: one May and one June are no usual rain.</summary>
    [Fact]
    public void Usual_rain_of_one_year_is_not_taken_off_and_the_table_says_so()
    {
        var site = Course();
        var yaml = File.ReadAllText(site.SiteFile);
        var rain = yaml.Split('\n').Single(l => l.TrimStart().StartsWith("rain:", StringComparison.Ordinal) && l.Contains('[', StringComparison.Ordinal));
        File.WriteAllText(site.SiteFile, yaml.Replace(rain + "\n", "", StringComparison.Ordinal));
        foreach (var file in Directory.GetFiles(Path.Combine(Repository.Root, "sample-weather", "inbox"), "*.csv").Where(f => !f.EndsWith("logbook.csv", StringComparison.Ordinal)))
        {
            File.Copy(file, Path.Combine(site.Inbox, Path.GetFileName(file)));
        }

        var morning = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-07-16");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        var table = RunningProgram.Run("season", "--home", _home.Path);
        Assert.Contains("This site's own days know May to June of 1 year only: that is what fell, not what is usual, and is not taken off (a mean takes at least 10 years, a normal 30).", table.Output, StringComparison.Ordinal);
        Assert.Contains("No usual rain is known of January to December: go by the percentages without rain.", table.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("usual  ", table.Output, StringComparison.Ordinal);
        var csv = RunningProgram.Run("season", "--home", _home.Path, "--format", "csv");
        Assert.EndsWith(",effective_rain_years", csv.Output.Split('\n')[0], StringComparison.Ordinal);
        Assert.All(csv.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1), l => Assert.EndsWith(",,,,,", l, StringComparison.Ordinal));
        Assert.Contains("1 year only", csv.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_door_card_keeps_its_number_until_its_own_chart_changes()
    {
        var site = Course();
        var page = Path.Combine(site.Path, "door-card.html");
        var first = RunningProgram.Run("door-card", "--home", _home.Path);
        Assert.True(first.ExitCode == 0, first.ToString());
        Assert.Contains("Revision 1", first.Output, StringComparison.Ordinal);
        var bytes = File.ReadAllBytes(page);
        Assert.Equal(0, RunningProgram.Run("door-card", "--home", _home.Path).ExitCode);
        Assert.Equal(bytes, File.ReadAllBytes(page));

        File.WriteAllText(site.StationsFile, File.ReadAllText(site.StationsFile).Replace("putting green east,greens,21", "putting green east,greens,23", StringComparison.Ordinal));
        Assert.Contains("Revision 2", RunningProgram.Run("door-card", "B1", "--home", _home.Path).Output, StringComparison.Ordinal);
        var other = RunningProgram.Run("door-card", "B2", "--home", _home.Path).Output;
        Assert.Contains("Revision 1", other, StringComparison.Ordinal);
        Assert.Contains("Lock out", other, StringComparison.Ordinal);
        Assert.Equal(2, RunningProgram.Run("door-card", "B99", "--home", _home.Path).ExitCode);
    }

    private SiteFolder Course()
    {
        var site = _home.EmptySite();
        foreach (var file in new[] { site.SiteFile, site.StationsFile })
        {
            File.Copy(Path.Combine(Repository.Root, "sample-weather", "site", Path.GetFileName(file)), file);
        }

        return site;
    }
}
