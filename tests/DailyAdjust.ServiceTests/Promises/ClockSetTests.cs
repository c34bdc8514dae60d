using System.Globalization;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Promises;

/// <summary>The machine's clock is set under the running service: on the example site in June 2026, the sheet at 05:00 in Chicago, which is 10:00 UTC.</summary>
[Trait("Promise", "5")]
public sealed class ClockSetTests : IDisposable
{
    private readonly TestHome _home = new();

    public ClockSetTests() => Tool.Need("gcc");

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Set_back_and_forward_every_morning_comes_and_none_twice()
    {
        var site = ExampleSite.TakenIn(_home);
        using var clock = new MovedClock(At(9, 4, 40));
        using var service = new Served(_home, clock.Variables);
        service.LetItLook(site);
        Assert.Empty(Served.Mornings(site));
        clock.Set(At(9, 4, 51));
        Served.WaitFor("the sheet of the 9th", () => Served.IsOut(site, June(9)));

        var random = new Random(20260609);
        var count = Tried.Times(3, 60);
        double[] first = [-0.3, -6, -23];
        for (var i = 0; i < count; i++)
        {
            clock.Set(At(9, 5, 10).AddHours(i < first.Length ? first[i] : -23.5 * random.NextDouble()));
            service.LetItLook(site);
            clock.Set(At(9, 5, 10).AddHours(i < first.Length ? 0 : 23.5 * random.NextDouble()));
            service.LetItLook(site);
        }

        clock.Set(At(10, 4, 52));
        Served.WaitFor("the sheet of the 10th", () => Served.IsOut(site, June(10)));
        clock.Set(At(9, 4, 55));
        service.LetItLook(site);
        clock.Set(At(11, 5, 30));
        Served.WaitFor("the sheet of the 11th", () => Served.IsOut(site, June(11)));
        service.Stop();
        Assert.Equal("1 Written, 1 Written, 1 Written", Steps(site, 9, 11));
        Assert.Contains("This sheet was due at 05:00 and was made at 05:30.", Served.Sheet(site, June(11)), StringComparison.Ordinal);
        Assert.DoesNotContain("This sheet was due", Served.Sheet(site, June(10)), StringComparison.Ordinal);
        Tried.Held(5, "clock set back and forward under the running service", count + 1);
    }

    [Fact]
    public void A_clock_that_ran_days_ahead_and_was_set_right_costs_no_morning()
    {
        var site = ExampleSite.TakenIn(_home);
        using var clock = new MovedClock(At(9, 4, 51));
        using var service = new Served(_home, clock.Variables);
        Served.WaitFor("the sheet of the 9th", () => Served.IsOut(site, June(9)));
        clock.Set(At(12, 4, 51));
        Served.WaitFor("the sheet of a day that has not come", () => Served.IsOut(site, June(12)));

        foreach (var day in (int[])[10, 11])
        {
            clock.Set(At(day, 4, 51));
            Served.WaitFor("the sheet of a day that the clock had passed", () => Served.IsOut(site, June(day)));
            Assert.Contains("it was wrong then, or it is now", Served.Sheet(site, June(day)), StringComparison.Ordinal);
        }

        Assert.Contains("sheet 2026-06-12/1 was made when it showed 2026-06-12 05:00", service.Log(), StringComparison.Ordinal);

        // What was known on the 12th's own morning is another thing than what was known when its sheet was made.
        Served.Drop(site, "logbook-leak.csv", "time,kind,where,value,unit,until,by,note\n2026-06-11 09:00,off,C1/P2,,,,,leak\n");
        service.LetItLook(site);
        clock.Set(At(12, 4, 51));
        Served.WaitFor("the 12th's own sheet", () => Served.IsOut(site, June(12), issue: 2));
        service.Stop();
        Assert.DoesNotContain("it was wrong then", Served.Sheet(site, June(12)), StringComparison.Ordinal);
        Tried.Held(5, "clock days ahead, then set right", 1);
    }

    [Fact]
    public void A_clock_that_lost_its_battery_is_told_and_costs_no_morning_once_it_is_right()
    {
        var site = ExampleSite.TakenIn(_home);
        Assert.Equal(0, RunningProgram.Run("morning", "--home", _home.Path, "--date", "2026-06-09").ExitCode);
        using var clock = new MovedClock(new DateTimeOffset(2015, 1, 1, 0, 0, 0, TimeSpan.Zero));
        using var service = new Served(_home, clock.Variables);
        Served.WaitFor("the alarm", () => service.Log().Contains("This machine's clock shows 2014-12-31 18:00, and sheet 2026-06-09/1", StringComparison.Ordinal));
        service.LetItLook(site);
        clock.Set(At(10, 4, 51));
        Served.WaitFor("the sheet of the 10th", () => Served.IsOut(site, June(10)));
        service.Stop();
        Assert.Equal("1 Written, 1 Written", Steps(site, 9, 10));
        Assert.DoesNotContain("it was wrong then", Served.Sheet(site, June(10)), StringComparison.Ordinal);
        Tried.Held(5, "clock back at its beginning", 1);
    }

    private static DateOnly June(int day) => new(2026, 6, day);

    /// <summary>A time on the site's clock.</summary>
    private static DateTimeOffset At(int day, int hour, int minute) => new DateTimeOffset(2026, 6, day, hour, minute, 0, TimeSpan.FromHours(-5)).ToUniversalTime();

    /// <summary>Issue and step of every record of these days; nothing may lie outside them.</summary>
    private static string Steps(SiteFolder site, int first, int last)
    {
        var mornings = Served.Mornings(site);
        Assert.Equal(Enumerable.Range(first, last - first + 1).Select(June), mornings.Select(m => m.Date));
        return string.Join(", ", mornings.Select(m => string.Create(CultureInfo.InvariantCulture, $"{m.Issue} {m.Step}")));
    }
}
