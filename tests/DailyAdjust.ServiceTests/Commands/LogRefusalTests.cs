using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`log` of what cannot count: refused with 2, the reason and what to type instead.</summary>
public sealed class LogRefusalTests : IDisposable
{
    private readonly TestHome _home = new();

    public LogRefusalTests() => ExampleSite.TakenIn(_home);

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("void setting C1 --date 2026-06-01 --time 08:00", "No setting of C1 stands at 2026-06-01 08:00, so there is nothing to void.")]
    [InlineData("void setting C1/P2 --date 2026-06-05 --time 10:31", "The nearest is 2026-06-05 10:30 C1/P2.")]
    [InlineData("off C2/P1 --date 2026-06-15 --until 2026-07-20", "off has no end, but until 2026-07-20 stands there. it counts until the next entry; for some days that end by themselves log pause")]
    [InlineData("pump C1 100 gpm", "pump does not go with C1. it goes with pump.")]
    [InlineData("setting C1/P9 80", "there is no \"C1/P9\" on this site. did you mean \"C1/P1\"?")]
    [InlineData("stage stage9", "there is no \"stage9\" on this site. stage is of the whole site: write stage site NAME, NAME none.")]
    [InlineData("hold area:greens --until 2026-07-15 --date 2026-07-16", "until 2026-07-15 lies before 2026-07-16: it would end before it begins. one of them is wrong: write an end after its time")]
    [InlineData("no-water C1 --until 2026-07-15 --date 2026-07-16", "it would end before it begins.")]
    [InlineData("water-in C1/1 5 mm --until 2026-07-15 --date 2026-07-16", "it would end before it begins.")]
    [InlineData("setting C1/P1 80 mph", "units that fit: %.")]
    [InlineData("run C1/P1 80 mph", "units that fit: min, ")]
    public void It_says_why_and_what_to_type(string words, string said)
    {
        var result = Run(["log", .. words.Split(' ')]);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains(said, result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("?.", result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("m³/m³", result.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("Added", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_voided_once_cannot_be_voided_again_and_a_void_can()
    {
        string[] words = ["log", "void", "setting", "C1/P2", "--time", "2026-06-05 10:30"];
        Assert.Equal(0, Run(words).ExitCode);
        var again = Run(words);
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("so there is nothing to void.", again.Error, StringComparison.Ordinal);
        Assert.Equal(0, Run("log", "void", "void", "C1/P2", "--time", "2026-06-05 10:30").ExitCode);
    }

    [Fact]
    public void A_round_of_an_issue_that_is_not_there_names_those_that_are()
    {
        Assert.Equal(0, Run("morning", "--date", "2026-06-10").ExitCode);
        var result = Run("log", "round", "2026-06-10/7", "done");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("The sheet of 2026-06-10 has no issue 7, so its round says nothing.", result.Error, StringComparison.Ordinal);
        Assert.Contains("There is 2026-06-10/1; a date alone means the newest.", result.Error, StringComparison.Ordinal);
        Assert.Contains("No sheet of 2026-06-11 was issued", Run("log", "round", "2026-06-11", "done").Error, StringComparison.Ordinal);
    }

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
