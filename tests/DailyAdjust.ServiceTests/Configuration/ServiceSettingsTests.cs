using DailyAdjust.Service;
using DailyAdjust.Service.Configuration;
using Xunit;

namespace DailyAdjust.ServiceTests.Configuration;

public sealed class ServiceSettingsTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Without_a_file_the_defaults_hold()
    {
        Assert.Equal(30, ServiceSettings.Read(_home.Home, []).PollSeconds);
    }

    [Fact]
    public void The_command_line_wins_over_the_file()
    {
        Settings("""{ "DailyAdjust": { "PollSeconds": 5, "KeepTakenDays": 7 } }""");
        var options = ServiceSettings.Read(_home.Home, ["PollSeconds=9"]);
        Assert.Equal(9, options.PollSeconds);
        Assert.Equal(7, options.KeepTakenDays);
    }

    [Fact]
    public void A_misspelt_key_is_an_error()
    {
        Settings("""{ "DailyAdjust": { "PolSeconds": 5 } }""");
        var error = Assert.Throws<WrongInputException>(() => ServiceSettings.Read(_home.Home, []));
        Assert.Contains("PolSeconds", error.Message, StringComparison.Ordinal);
        Assert.Contains("appsettings.json", error.Hint, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_beside_the_section_is_an_error()
    {
        Settings("""{ "PollSeconds": 5 }""");
        Assert.Contains("PollSeconds", Assert.Throws<WrongInputException>(() => ServiceSettings.Read(_home.Home, [])).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("PollSeconds=0")]
    [InlineData("PollSeconds=often")]
    [InlineData("LogLevel=Loud")]
    [InlineData("Unheard=1")]
    [InlineData("PollSeconds")]
    public void A_value_beyond_its_limits_is_an_error(string given)
    {
        Assert.Throws<WrongInputException>(() => ServiceSettings.Read(_home.Home, [given]));
    }

    [Fact]
    public void A_file_that_is_not_json_is_an_error_with_its_place()
    {
        Settings("{ \"DailyAdjust\": ");
        Assert.Contains("appsettings.json", Assert.Throws<WrongInputException>(() => ServiceSettings.Read(_home.Home, [])).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sample_beside_the_code_names_every_key_with_its_default()
    {
        var sample = File.ReadAllText(Path.Combine(Repository.Root, "deploy", "appsettings.sample.json"));
        var explained = File.ReadAllText(Path.Combine(Repository.Root, "docs", "configuration.md"));
        Settings(sample);
        var read = ServiceSettings.Read(_home.Home, []);
        var defaults = new ServiceOptions();
        foreach (var property in typeof(ServiceOptions).GetProperties())
        {
            // On the line before it stands what it does.
            Assert.Matches($"(?m)^ +// .+\\.\n +\"{property.Name}\": ", sample);
            Assert.Contains($"`{property.Name}`", explained, StringComparison.Ordinal);
            Assert.Equal(property.GetValue(defaults), property.GetValue(read));
        }
    }

    private void Settings(string json) => File.WriteAllText(_home.Home.SettingsFile, json);
}
