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
    public void A_time_that_the_clock_skips_is_taken_and_said()
    {
        var skipped = RunningProgram.Run("log", "note", "C1", "--time", "2026-03-08 02:30", "--note", "mower", "--home", _home.Path);
        Assert.Contains("Note: there is no 02:30 on 2026-03-08: the clocks are put forward over it. It counts as 03:00.", skipped.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("there is no", RunningProgram.Run("log", "note", "C1", "--time", "2026-03-08 03:30", "--note", "mower", "--home", _home.Path).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_description_that_is_no_description_is_refused_for_its_size()
    {
        File.WriteAllText(SecondDay.Site(_home).SiteFile, new string('#', 1_000_001));
        var result = RunningProgram.Run("check", "--home", _home.Path);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("site.yaml:1:1: the file is larger than 1 MB. look whether it is the right one", result.Output + result.Error, StringComparison.OrdinalIgnoreCase);
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
