using DailyAdjust.Ledger.Records;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The service was not running, or its machine slept, when mornings were due: the newest is issued and says that it is late; the others are recorded as missed.</summary>
[Trait("Promise", "5")]
public sealed class SleepTests : IDisposable
{
    private readonly TestHome _home = new();

    public SleepTests() => Tool.Need("gcc");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Started_late_it_makes_todays_sheet_at_once_and_says_so()
    {
        var site = ExampleSite.TakenIn(_home);
        using var clock = new MovedClock(At(9, 9, 0));
        using (var late = new Served(_home, clock.Variables))
        {
            Served.WaitFor("the sheet", () => Served.IsOut(site, June(9)));
            late.Stop();
        }

        Assert.Contains("This sheet was due at 05:00 and was made at 09:00.", Served.Sheet(site, June(9)), StringComparison.Ordinal);
        clock.Set(At(12, 2, 0));
        using var again = new Served(_home, clock.Variables);
        again.LetItLook(site);
        Assert.Equal([(June(9), MorningStep.Written), (June(10), MorningStep.Missed), (June(11), MorningStep.Missed)], Served.Mornings(site).Select(m => (m.Date, m.Step)));
        clock.Set(At(12, 4, 51));
        Served.WaitFor("the next sheet", () => Served.IsOut(site, June(12)));
        again.Stop();
        Assert.Contains("2 mornings, 2026-06-10 to 2026-06-11, were slept over", Served.Sheet(site, June(12)), StringComparison.Ordinal);
        Assert.DoesNotContain("This sheet was due", Served.Sheet(site, June(12)), StringComparison.Ordinal);
        Tried.Held(5, "started late", 2);
    }

    [Fact]
    public void Asleep_over_two_mornings_it_wakes_to_one_late_sheet()
    {
        var site = ExampleSite.TakenIn(_home);
        var count = Tried.Times(1, 20);
        var day = 9;
        using var clock = new MovedClock(At(9, 4, 51));
        using var service = new Served(_home, clock.Variables);
        Served.WaitFor("the first sheet", () => Served.IsOut(site, June(9)));
        for (var i = 0; i < count; i++)
        {
            service.Signal("STOP");
            clock.Set(At(day + 3, 8, 0));
            service.Signal("CONT");
            day += 3;
            Served.WaitFor("the sheet after waking", () => Served.IsOut(site, June(day)));
            service.LetItLook(site);
            var sheet = Served.Sheet(site, June(day));
            Assert.Contains("This sheet was due at 05:00 and was made at 08:00.", sheet, StringComparison.Ordinal);
            Assert.Contains($"2 mornings, {June(day - 2):yyyy-MM-dd} to {June(day - 1):yyyy-MM-dd}, were slept over", sheet, StringComparison.Ordinal);
        }

        service.Stop();
        var mornings = Served.Mornings(site);
        Assert.Equal(Enumerable.Range(9, day - 8).Select(June), mornings.Select(m => m.Date));
        Assert.All(mornings, m => Assert.Equal((m.Date.DayNumber - June(9).DayNumber) % 3 == 0 ? MorningStep.Written : MorningStep.Missed, m.Step));
        Tried.Held(5, "asleep over two mornings", count);
    }

    private static DateOnly June(int day) => new DateOnly(2026, 6, 1).AddDays(day - 1);

    private static DateTimeOffset At(int day, int hour, int minute) =>
        new DateTimeOffset(June(day), new TimeOnly(hour, minute), TimeSpan.FromHours(-5)).ToUniversalTime();
}
