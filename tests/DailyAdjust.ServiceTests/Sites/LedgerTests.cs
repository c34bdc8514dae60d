using DailyAdjust.Ledger;
using DailyAdjust.Ledger.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Sites;

/// <summary>What the service makes of a ledger that something happened to.</summary>
[Trait("Promise", "7")]
public sealed class LedgerTests : IDisposable
{
    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Deleted_derived_days_come_back_byte_for_byte()
    {
        var site = ExampleSite.TakenIn(_home);
        Run("morning", "--date", "2026-06-16");
        var (weather, balance, advice) = Printed();
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write))
        {
            ledger.DropDerived();
        }

        Run("morning", "--date", "2026-06-16");
        Assert.Equal((weather, balance, advice), Printed());
    }

    [Fact]
    public void A_sheet_that_a_crash_left_begun_is_finished_as_of_its_own_instant()
    {
        var site = ExampleSite.TakenIn(_home);
        var asOf = new DateTimeOffset(2026, 6, 10, 10, 0, 0, TimeSpan.Zero);
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write))
        {
            ledger.Mornings.Begin(new DateOnly(2026, 6, 10), asOf, "1", "test");
        }

        Run("morning", "--date", "2026-06-11");
        var finished = File.ReadAllText(Path.Combine(site.ReportFolder(new DateOnly(2026, 6, 10)), "advice.csv"));
        using var other = new TestHome();
        ExampleSite.TakenIn(other);
        Assert.Equal(RunningProgram.Run("advice", "--home", other.Path, "--date", "2026-06-10", "--format", "csv").Output, finished);
    }

    [Fact]
    public void A_sheet_that_a_crash_left_unwritten_is_written_as_it_was_computed()
    {
        var site = ExampleSite.TakenIn(_home);
        var date = new DateOnly(2026, 6, 10);
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write))
        {
            ledger.Mornings.Begin(date, new DateTimeOffset(2026, 6, 10, 10, 0, 0, TimeSpan.Zero), "1", "test");
            ledger.Mornings.RecordComputed(date, 1, [], new Dictionary<string, byte[]>(StringComparer.Ordinal) { ["report.txt"] = "as it was"u8.ToArray() });
        }

        Run("morning", "--date", "2026-06-11");
        Assert.Equal("as it was", File.ReadAllText(Path.Combine(site.ReportFolder(date), "report.txt")));
        using var read = SiteLedger.Open(site.LedgerFile, LedgerMode.Read);
        Assert.Equal(MorningStep.Written, read.Mornings.Get(date, 1)?.Step);
    }

    [Fact]
    public void While_another_process_writes_a_command_waits_and_then_says_so()
    {
        var site = ExampleSite.TakenIn(_home);
        using var held = SiteLedger.Open(site.LedgerFile, LedgerMode.Write);
        Assert.Equal(0, Run("balance", "--date", "2026-06-10").ExitCode);
        var result = Run("log", "note", "dew");
        Assert.Equal(1, result.ExitCode);
        Assert.Contains("Another process", result.Error, StringComparison.Ordinal);
    }

    private (string Weather, string Balance, string Advice) Printed() =>
        (Run("weather", "--format", "csv").Output, Run("balance", "--format", "csv").Output, Run("advice", "--date", "2026-06-16", "--format", "csv").Output);

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
