using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`weather guess` through the real program: what it prints can be pasted, and `weather` beside it goes on printing days.</summary>
public sealed class WeatherGuessTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void The_proposal_pasted_into_the_site_passes_check_and_reads_the_file()
    {
        var site = ExampleSite.PutInto(_home);
        var guess = RunningProgram.Run("weather", "guess", ExampleSite.Weather, "--home", _home.Path, "--site", ExampleSite.Name);
        Assert.True(guess.ExitCode == 0, guess.ToString());
        Assert.Contains("fits local and end", guess.Output, StringComparison.Ordinal);
        Assert.Contains("408 rows read, 0 set aside, 0 refused", guess.Output, StringComparison.Ordinal);
        Assert.Contains("2026-06-02    24     74.8     58.1", guess.Output, StringComparison.Ordinal);

        var proposal = guess.Output[guess.Output.IndexOf("weather:\n", StringComparison.Ordinal)..];
        var yaml = File.ReadAllText(site.SiteFile);
        File.WriteAllText(site.SiteFile, yaml[..yaml.IndexOf("weather:\n", StringComparison.Ordinal)]
            + proposal.Replace("{ id: yard-hourly,", "{ id: yard,", StringComparison.Ordinal)
            + yaml[(yaml.IndexOf("\nsoils:", StringComparison.Ordinal) + 1)..]);
        var check = RunningProgram.Run("check", "--home", _home.Path);
        Assert.True(check.ExitCode == 0, check.ToString());
        var ingest = RunningProgram.Run("ingest", ExampleSite.Weather, "--home", _home.Path);
        Assert.Contains("408 rows read, 0 set aside, 0 refused", ingest.Output, StringComparison.Ordinal);
        var days = RunningProgram.Run("weather", "--home", _home.Path, "--from", "2026-06-02", "--to", "2026-06-02", "--format", "csv");
        Assert.True(days.ExitCode == 0, days.ToString());
        Assert.Contains("2026-06-02,yard-hourly,", days.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Without_a_place_the_clock_is_to_be_checked_and_ETo_is_not_shown()
    {
        var guess = InProcess.Run("weather", "guess", ExampleSite.Weather, "--units", "metric");
        Assert.Equal(0, guess.ExitCode);
        Assert.Contains("clock: local   # check: nothing in the file says it", guess.Output, StringComparison.Ordinal);
        Assert.Contains("Tmax °C", guess.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("ETo mm", guess.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_that_can_be_read_in_two_ways_show_both()
    {
        var file = Path.Combine(_home.Path, "export.csv");
        File.WriteAllText(file, "Date,Temp (F)\n05/06/2026 13:00,77\n05/06/2026 14:00,78\n05/06/2026 15:00,78\n05/06/2026 16:00,78\n");
        var guess = InProcess.Run("weather", "guess", file, "--units", "us");
        Assert.Contains("pattern: \"MM/dd/yyyy HH:mm\"   # check: ", guess.Output, StringComparison.Ordinal);
        Assert.Contains("it may be dd/MM/yyyy HH:mm just as well", guess.Output, StringComparison.Ordinal);
        Assert.Contains("pattern: \"dd/MM/yyyy HH:mm\"   # check: ", InProcess.Run("weather", "guess", file, "--units", "metric").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_without_a_header_ends_with_2_and_says_what_to_do()
    {
        var file = Path.Combine(_home.Path, "export.csv");
        File.WriteAllText(file, "2026-06-01 13:00,25.0,50\n2026-06-01 14:00,25.0,50\n");
        var guess = RunningProgram.Run("weather", "guess", file);
        Assert.Equal(2, guess.ExitCode);
        Assert.Contains("add a header", guess.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("site.yaml", guess.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--latitude", "44.2")]
    [InlineData("--latitude", "144.2")]
    [InlineData("--latitude", "44.2", "--longitude", "-98.3", "--time-zone", "Nowhere/Atall")]
    [InlineData("--latitude", "44.2", "--longitude", "-98.3", "--time-zone", "America/Chicago", "--elevation", "1290")]
    public void A_place_that_is_wrong_or_given_in_part_ends_with_2(params string[] place)
    {
        var guess = InProcess.Run(["weather", "guess", ExampleSite.Weather, .. place]);
        Assert.Equal(2, guess.ExitCode);
        Assert.Empty(guess.Output);
        Assert.Contains(place[^2], guess.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_ends_with_2() =>
        Assert.Equal(2, InProcess.Run("weather", "guess", Path.Combine(_home.Path, "none.csv")).ExitCode);
}
