using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`morning` and what follows from it.</summary>
public sealed class MorningTests : IDisposable
{
    private static readonly string[] Files = ["advice.csv", "advice.json", "report-full.txt", "report.html", "report.txt", "round.csv"];

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void It_takes_the_inbox_and_writes_every_file_of_the_report()
    {
        var site = ExampleSite.PutInto(_home);
        File.Copy(ExampleSite.Weather, Path.Combine(site.Inbox, "yard-hourly.csv"));
        File.Copy(ExampleSite.Logbook, Path.Combine(site.Inbox, "logbook.csv"));
        var result = Run("morning", "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        var folder = site.ReportFolder(new DateOnly(2026, 6, 10));
        Assert.Equal(Files, Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("2026-06-10/1", File.ReadAllText(Path.Combine(folder, "report-full.txt")), StringComparison.Ordinal);
        Assert.Contains(folder, result.Output, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(site.Taken, "yard-hourly.csv")));
        Assert.True(File.Exists(Path.Combine(site.Taken, "logbook.csv")));
    }

    [Fact]
    public void Again_on_the_same_date_it_writes_the_next_issue()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        Assert.Contains("2026-06-10/2", Run("morning", "--date", "2026-06-10").Output, StringComparison.Ordinal);
        var text = File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt"));
        Assert.Contains("replaces issue 1", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Without_weather_every_program_stays_as_set_and_the_sheet_says_why()
    {
        var site = ExampleSite.PutInto(_home);
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Equal(0, result.ExitCode);
        var advice = File.ReadAllLines(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "advice.csv")).Skip(1).ToList();
        Assert.Equal(5, advice.Count);
        Assert.All(advice, line => Assert.Contains(",as-set,", line, StringComparison.Ordinal));
        Assert.Contains("no weather has come in yet", File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt")), StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_filled_in_round_sheet_that_comes_back_becomes_the_settings()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-16");
        var round = File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 16)), "round.csv"));
        Assert.Contains("C1,left of the third tee,P2,Greens,set,90,25,,,", round, StringComparison.Ordinal);
        File.WriteAllText(Path.Combine(site.Inbox, "round.csv"), round.Replace("set,90,25,,,", "set,90,25,yes,,", StringComparison.Ordinal));
        Assert.Equal(0, Run("morning", "--date", "2026-06-17").ExitCode);
        var advice = CsvRows.Of(File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 17)), "advice.csv")));
        var greens = Assert.Single(advice.Rows, row => advice.Text(row, "controller") is "C1" && advice.Text(row, "program") is "P2");
        Assert.Equal(25, advice.Number(greens, "setting"));
    }

    [Fact]
    public void A_round_said_to_be_done_becomes_the_settings_too()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-16");
        var done = Run("log", "round", "2026-06-16", "done", "--time", "2026-06-16 11:00");
        Assert.True(done.ExitCode == 0, done.ToString());
        Run("morning", "--date", "2026-06-17");
        Assert.Contains("2026-06-17,C1,P2,25,", File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 17)), "advice.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public void Mornings_in_between_are_recorded_as_missed_and_not_issued()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        Run("morning", "--date", "2026-06-13");
        Assert.False(Directory.Exists(site.ReportFolder(new DateOnly(2026, 6, 11))));
        var log = string.Concat(Directory.GetFiles(_home.Home.LogsFolder).Select(File.ReadAllText));
        Assert.Contains("slept over", log, StringComparison.Ordinal);
        Assert.Contains("2026-06-12", log, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_advice_is_one_event_of_the_log()
    {
        ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        var events = Directory.GetFiles(_home.Home.LogsFolder, "*.json").SelectMany(File.ReadAllLines)
            .Count(line => line.Contains("\"Advice\":", StringComparison.Ordinal));
        Assert.Equal(5, events);
    }

    [Fact]
    public void A_bad_edit_leaves_the_last_good_description_and_says_so_on_the_sheet()
    {
        var site = ExampleSite.TakenIn(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("satisfy: 80 %", "satisfyy: 80 %", StringComparison.Ordinal));
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Equal(0, result.ExitCode);
        var text = File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "report-full.txt"));
        Assert.Contains("site.yaml:", text, StringComparison.Ordinal);
        Assert.Contains("satisfyy", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_edit_holds_from_the_next_day_and_earlier_days_keep_their_bytes()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        var before = Run("balance", "--format", "csv").Output.Split('\n');
        var stations = File.ReadAllText(site.StationsFile);
        File.WriteAllText(site.StationsFile, stations.Replace("C1,1,green 1,greens,,32,,0.55", "C1,1,green 1,greens,,32,,1.10", StringComparison.Ordinal));
        Assert.Equal(0, Run("morning", "--date", "2026-06-11").ExitCode);
        var after = Run("balance", "--format", "csv").Output.Split('\n');
        Assert.Equal(before.Where(line => string.CompareOrdinal(line, "2026-06-12") < 0), after.Where(line => string.CompareOrdinal(line, "2026-06-12") < 0));
        Assert.NotEqual(before, after);
    }

    [Fact]
    public void An_edit_that_corrects_what_was_always_so_holds_from_the_start()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-10");
        var before = Run("balance", "--date", "2026-06-03", "--format", "csv").Output;
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("site:\n", "site:\n  correct: true\n", StringComparison.Ordinal).Replace("root_depth: 8 in", "root_depth: 9 in", StringComparison.Ordinal));
        var result = Run("morning", "--date", "2026-06-11");
        Assert.True(result.ExitCode == 0 && result.Error.Length == 0, result.ToString());
        Assert.NotEqual(before, Run("balance", "--date", "2026-06-03", "--format", "csv").Output);
    }

    [Fact]
    public void One_site_that_fails_does_not_stop_the_others()
    {
        ExampleSite.TakenIn(_home);
        var broken = _home.EmptySite("a-broken-one");
        File.WriteAllText(broken.SiteFile, "site: [");
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("a-broken-one", result.Error, StringComparison.Ordinal);
        Assert.True(Directory.Exists(_home.Home.Site(ExampleSite.Name).ReportFolder(new DateOnly(2026, 6, 10))));
    }

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
