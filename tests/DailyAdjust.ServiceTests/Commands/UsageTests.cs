using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>What the program says when it is called wrongly, or asked for help.</summary>
public sealed class UsageTests
{
    [Theory]
    [InlineData("unheard")]
    [InlineData("new", "--unheard")]
    [InlineData("new", "--date", "9 June")]
    [InlineData("new", "--date", "2026-02-30")]
    public void A_wrong_call_ends_with_2_and_speaks_on_standard_error(params string[] arguments)
    {
        var result = RunningProgram.Run(arguments);
        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains("--help", result.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Help_ends_with_an_example()
    {
        var result = RunningProgram.Run("new", "--help");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Examples:\n  dailyadjust new", result.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Help_names_the_place_of_the_home_folder()
    {
        var result = RunningProgram.Run("--help");
        Assert.Equal(0, result.ExitCode);
        Assert.Contains("DAILYADJUST_HOME", result.Output, StringComparison.Ordinal);
        Assert.Contains("./dailyadjust-home", result.Output, StringComparison.Ordinal);
    }
}
