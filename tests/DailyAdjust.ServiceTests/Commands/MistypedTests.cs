using DailyAdjust.ServiceTests.Promises.Disk;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>What a hand may type wrong and nobody can take back, and what it means as it stands.</summary>
public sealed class MistypedTests : IDisposable
{
    private readonly TestHome _home = SecondDay.Example.HomeWithInbox();

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("9999-12-31", "has not come")]
    [InlineData("2126-06-09", "has not come")]
    [InlineData("0001-01-01", "lies before the balance begins")]
    public void No_sheet_is_issued_of_a_date_that_has_not_come_or_lies_before_the_site(string date, string why)
    {
        var result = RunningProgram.Run("morning", "--home", _home.Path, "--date", date);
        Assert.True(result.ExitCode == 2, result.ToString());
        Assert.Contains(why, result.Error, StringComparison.Ordinal);
        Assert.Equal(0, SiteState.Number(SecondDay.Site(_home).LedgerFile, $"SELECT count(*) FROM morning WHERE day = '{date}'"));
    }

    [Fact]
    public void A_note_may_begin_with_an_at_sign_and_no_file_is_read_for_it()
    {
        var file = Path.Combine(_home.Path, "secret");
        File.WriteAllText(file, "chalk");
        foreach (var note in new[] { "@4th green, a leak", "@" + file })
        {
            var result = RunningProgram.Run("log", "note", "C1", "--note", note, "--home", _home.Path);
            Assert.True(result.ExitCode == 0, result.ToString());
            Assert.Contains(note, result.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("chalk", result.Output, StringComparison.Ordinal);
        }
    }
}
