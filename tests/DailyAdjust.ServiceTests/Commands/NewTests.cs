using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`new` with piped answers.</summary>
public sealed class NewTests : IDisposable
{
    private const string Answers = """
        Mill Creek
        44.2
        -98.3
        America/Chicago
        us
        1290
        cool

        2026-06-01
        1
        behind the "shed"
        2
        Fairways 1-3
        21:30
        mon wed fri
        1-3 fairways 60; 4 tees 12
        Greens
        4:40

        5-6 greens 25
        """;

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Piped_answers_give_a_site_with_minutes_starts_and_days()
    {
        var result = New(Answers);
        Assert.True(result.ExitCode == 0, result.ToString());
        var site = _home.Home.Site("mill-creek");
        var yaml = File.ReadAllText(site.SiteFile);
        Assert.Contains("starts: [\"04:40\"], days: every day", yaml, StringComparison.Ordinal);
        Assert.Contains("starts: [\"21:30\"], days: [mon, wed, fri]", yaml, StringComparison.Ordinal);
        Assert.Contains("place: \"behind the \\\"shed\\\"\"", yaml, StringComparison.Ordinal);
        Assert.Equal(7, File.ReadAllLines(site.StationsFile).Length);
        Assert.Contains("C1,4,,tees,12,,", File.ReadAllText(site.StationsFile), StringComparison.Ordinal);
        Assert.True(Directory.Exists(site.Inbox));
    }

    [Fact]
    public void A_newcomer_with_a_weather_file_comes_to_a_first_sheet_with_advice()
    {
        var answers = Answers.Replace("cool\n\n2026-06-01", $"cool\n{ExampleSite.Weather}\n2026-06-01", StringComparison.Ordinal);
        Assert.Equal(0, New(answers).ExitCode);
        var check = RunningProgram.Run("check", "--home", _home.Path);
        Assert.True(check.ExitCode == 0, check.ToString());
        Assert.Contains("Ready: 1 controllers, 2 programs, 6 stations", check.Output, StringComparison.Ordinal);
        var morning = RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-10");
        Assert.True(morning.ExitCode == 0, morning.ToString());
        var advice = File.ReadAllText(Path.Combine(_home.Home.Site("mill-creek").ReportFolder(new DateOnly(2026, 6, 10)), "advice.csv"));
        Assert.DoesNotContain("as-set", advice, StringComparison.Ordinal);
    }

    [Fact]
    public void A_weather_file_with_its_newest_row_first_is_read_the_same()
    {
        var lines = File.ReadAllLines(ExampleSite.Weather);
        var turned = Path.Combine(_home.Path, "yard-turned.csv");
        File.WriteAllLines(turned, [lines[0], .. lines.Skip(1).Reverse()]);
        Assert.Equal(0, New(Answers.Replace("cool\n\n2026-06-01", $"cool\n{turned}\n", StringComparison.Ordinal)).ExitCode);
        var yaml = File.ReadAllText(_home.Home.Site("mill-creek").SiteFile);
        Assert.Contains("interval: 1 h", yaml, StringComparison.Ordinal);
        Assert.Contains("start: 2026-06-01", yaml, StringComparison.Ordinal);
    }

    [Fact]
    public void A_newcomer_who_takes_every_proposal_in_metric_units_has_a_good_site_too()
    {
        var answers = Answers.Replace("America/Chicago\nus\n1290", "Europe/Berlin\nmetric\n90", StringComparison.Ordinal)
            .Replace("-98.3", "10.0", StringComparison.Ordinal).Replace("44.2", "52.3", StringComparison.Ordinal);
        Assert.Equal(0, New(answers).ExitCode);
        var check = RunningProgram.Run("check", "--home", _home.Path);
        Assert.True(check.ExitCode == 0, check.ToString());
    }

    [Fact]
    public void An_existing_site_is_never_overwritten()
    {
        New(Answers);
        var file = _home.Home.Site("mill-creek").SiteFile;
        File.WriteAllText(file, "mine");
        var second = New(Answers);
        Assert.Equal(2, second.ExitCode);
        Assert.Contains("exists already", second.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(file));
    }

    [Fact]
    public void A_wrong_piped_answer_names_the_question_and_writes_nothing()
    {
        var result = New(Answers.Replace("44.2", "144.2", StringComparison.Ordinal));
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("Latitude", result.Error, StringComparison.Ordinal);
        Assert.Contains("144.2", result.Error, StringComparison.Ordinal);
        Assert.Empty(_home.Home.Sites());
    }

    [Fact]
    public void Answers_that_end_early_name_the_first_open_question()
    {
        var result = New("Mill Creek\n44.2\n-98.3\nAmerica/Chicago\nus\n");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("Height above sea level", result.Error, StringComparison.Ordinal);
    }

    private ProgramResult New(string answers) =>
        RunningProgram.Run(new ProgramStart("new", "--home", _home.Path) { Input = answers + "\n" });
}
