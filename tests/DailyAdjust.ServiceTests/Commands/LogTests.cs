using DailyAdjust.Ledger;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>`log`: one entry from the command line.</summary>
public sealed class LogTests : IDisposable
{
    private readonly TestHome _home = new();

    public LogTests() => ExampleSite.TakenIn(_home);

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData("2026-06-15T10:00 setting C1/P2 80", "setting C1/P2 80 --time 2026-06-15T10:00")]
    [InlineData("2026-06-15 ran C1 no", "ran C1 no --date 2026-06-15")]
    [InlineData("2026-06-15 ran C1/P2 50 %", "ran C1/P2 50 --date 2026-06-15")]
    [InlineData("2026-06-15 06:00 probe C1/1 14 %", "probe C1/1 14 --date 2026-06-15 --time 06:00")]
    [InlineData("2026-06-15 06:00 rain gauge:yard 0.3 in", "rain yard 0.3 in --date 2026-06-15 --time 06:00")]
    [InlineData("2026-06-15 06:00 hose C1/3 0.1 in by RK", "hose C1/3 0.1 in --date 2026-06-15 --time 06:00 --by RK")]
    [InlineData("2026-06-15 06:00 off C2/P1 (leak)", "off C2/P1 --date 2026-06-15 --time 06:00 --note leak")]
    [InlineData("2026-06-15 hold C1 until 2026-06-20 (event)", "hold C1 --until 2026-06-20 --date 2026-06-15 --note event")]
    [InlineData("2026-06-15 season closed", "season closed --date 2026-06-15")]
    [InlineData("2026-06-05 10:30 void C1/P2 setting", "void setting C1/P2 --date 2026-06-05 --time 10:30")]
    public void What_people_say_is_repeated_and_added(string repeated, string words)
    {
        var before = NewestInput();
        var result = Run(["log", .. words.Split(' ')]);
        Assert.True(result.ExitCode == 0, result.ToString());
        Assert.Equal($"Added: {repeated}", result.Output.Split('\n')[0].TrimEnd());
        Assert.Equal(before + 1, NewestInput());
    }

    [Theory]
    [InlineData("settting C1/P2 80")]
    [InlineData("setting C9/P2 80")]
    [InlineData("setting C1/P2 often")]
    [InlineData("rain yard 0.3")]
    [InlineData("hold C1")]
    [InlineData("round 2026-06-15 done")]
    [InlineData("round 2026-06-15")]
    [InlineData("ran C1 no --time noon")]
    public void What_cannot_be_meant_ends_with_2_and_adds_nothing(string words)
    {
        var before = NewestInput();
        var result = Run(["log", .. words.Split(' ')]);
        Assert.Equal(2, result.ExitCode);
        Assert.NotEmpty(result.Error);
        Assert.Equal(before, NewestInput());
    }

    [Theory]
    [InlineData("--note", "leak \u0002at 4\u0003", "note")]
    [InlineData("--by", "Le\u001b[31me", "by")]
    [InlineData("--note", "leak\nat 4", "note")]
    public void A_character_that_nobody_sees_is_refused(string option, string text, string column)
    {
        var before = NewestInput();
        var result = Run("log", "off", "C2/P1", option, text);
        Assert.Equal(2, result.ExitCode);
        Assert.Contains($"control character stands in the {column}", result.Error, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain(result.Error, c => char.IsControl(c) && c is not ('\n' or '\r'));
        Assert.Equal(before, NewestInput());
        Assert.Equal(0, Run("log", "off", "C2/P1", "--note", "valve `2`").ExitCode);
    }

    [Fact]
    public void The_same_entry_twice_adds_nothing_and_another_value_takes_its_place()
    {
        string[] entry = ["log", "probe", "C1/1", "14", "--time", "2026-06-15 06:00"];
        Run(entry);
        Assert.Contains("Known already", Run(entry).Output, StringComparison.Ordinal);
        entry[3] = "15";
        Assert.Contains("Added in place of an earlier entry", Run(entry).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_late_entry_changes_its_day_and_what_follows_and_nothing_before()
    {
        var before = Run("balance", "--format", "csv").Output.Split('\n');
        Run("log", "hose", "C1/3", "0.2", "in", "--time", "2026-06-10 12:00");
        var after = Run("balance", "--format", "csv").Output.Split('\n');
        Assert.Equal(Before(before), Before(after));
        var changed = before.Zip(after).Where(pair => !string.Equals(pair.First, pair.Second, StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(changed);
        Assert.All(changed, pair => Assert.Contains(",C1,3,", pair.First, StringComparison.Ordinal));

        static IEnumerable<string> Before(string[] lines) => lines.Where(line => string.CompareOrdinal(line, "2026-06-10") < 0);
    }

    [Fact]
    public void Rain_read_by_hand_takes_the_instruments_place()
    {
        Run("log", "rain", "yard", "1", "in", "--date", "2026-06-03");
        Assert.Contains("2026-06-03,yard,6.1459,hourly,25.4000,", Run("weather", "--date", "2026-06-03", "--format", "csv").Output, StringComparison.Ordinal);
    }

    private long NewestInput()
    {
        using var ledger = SiteLedger.Open(_home.Home.Site(ExampleSite.Name).LedgerFile, LedgerMode.Read);
        return ledger.Watermark;
    }

    private ProgramResult Run(params string[] arguments) => InProcess.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);
}
