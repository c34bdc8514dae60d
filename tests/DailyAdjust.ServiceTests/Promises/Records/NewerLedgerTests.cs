using Xunit;

namespace DailyAdjust.ServiceTests.Promises.Records;

/// <summary>A ledger that a newer program wrote, under today's.</summary>
[Trait("Promise", "7")]
public sealed class NewerLedgerTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("log", "note", "dew")]
    [InlineData("morning")]
    [InlineData("advice", "--date", "2026-06-10")]
    [InlineData("backup")]
    public void It_is_refused_in_plain_words_and_left_as_it_is(params string[] command)
    {
        var site = ExampleSite.TakenIn(_home);
        RawLedger.Scalar(site.LedgerFile, "PRAGMA user_version = 99; PRAGMA wal_checkpoint(TRUNCATE);");
        var before = File.ReadAllBytes(site.LedgerFile);
        var result = RunningProgram.Run([.. command, "--home", _home.Path]);
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("newer DailyAdjust", result.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(site.LedgerFile));
        Assert.False(Directory.Exists(site.Backups) && Directory.EnumerateFiles(site.Backups).Any());
        Tried.Held(7, "newer ledgers refused", 1);
    }

    [Fact]
    public void One_that_an_older_program_wrote_is_copied_before_its_tables_are_brought_up()
    {
        var site = ExampleSite.TakenIn(_home);
        RawLedger.MakeOld(site.LedgerFile);
        var rows = RawLedger.Rows(site.LedgerFile);
        Assert.Equal(0, RunningProgram.Run("advice", "--date", "2026-06-10", "--home", _home.Path).ExitCode);
        Assert.Equal("1", RawLedger.Scalar(site.LedgerFile, "PRAGMA user_version"));
        Assert.Equal(0, RunningProgram.Run("morning", "--date", "2026-06-10", "--home", _home.Path).ExitCode);
        var copy = Assert.Single(Directory.GetFiles(site.Backups));
        Assert.Equal("1", RawLedger.Scalar(copy, "PRAGMA user_version"));
        Assert.Equal(rows, RawLedger.Rows(copy));

        // Brought up once, it is not copied again.
        Assert.Equal(0, RunningProgram.Run("log", "note", "dew", "--home", _home.Path).ExitCode);
        Assert.Single(Directory.GetFiles(site.Backups));
    }
}
