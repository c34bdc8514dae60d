using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>A station that reports a running total of rain: what fell is what the total grew by.</summary>
public sealed class RainCounterTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);
    private static readonly WeatherScene Scene = new();

    [Fact]
    public void Rain_is_what_the_total_grew_by()
    {
        var gauge = Gauge(hour => 100 + (hour / 6));
        Assert.Equal(4, gauge.RainMm);
        Assert.Equal(RainBasis.Measured, gauge.Basis);
        Assert.Equal([0, 6, 12, 18], gauge.Falls.Select(f => (int)(f.At - Scene.Clock.DayStart(Day)).TotalHours - 1));
    }

    [Fact]
    public void A_total_that_begins_again_at_midnight_loses_nothing()
    {
        // 1 mm in each of the hours 22, 23, 0, 1; the total goes back to 0 at 00:00.
        var gauge = Gauge(hour => hour < 24 ? Math.Max(0, Math.Min(2, hour - 21)) : Math.Min(2, hour - 23));
        Assert.Equal(2, gauge.RainMm);
    }

    [Fact]
    public void A_total_that_only_dips_is_wrong_and_makes_its_day_unknown_if_much_is_missing()
    {
        var day = Days(hour => hour is >= 30 and < 34 ? 100 - (hour % 2 * 3) : 100)[0];
        Assert.Equal(2, day.SetAside.Count(s => s.Why.Contains("it can only grow", StringComparison.Ordinal)));
    }

    [Fact]
    public void Rain_that_fell_while_nothing_was_reported_is_in_the_next_total()
    {
        var gauge = Gauge(hour => hour is >= 30 and < 36 ? double.NaN : hour < 36 ? 50 : 57);
        Assert.Equal(7, gauge.RainMm);
        Assert.Equal(Scene.Clock.DayStart(Day).AddHours(13), Assert.Single(gauge.Falls).At);
    }

    [Fact]
    public void So_it_is_where_the_rows_themselves_are_missing()
    {
        var readings = Counted(hour => hour < 36 ? 50 : 57).Where((_, hour) => hour is < 30 or >= 36).ToList();
        Assert.Equal(7, Scene.Days(Day, Day, ("yard", readings))[0].RainAt("yard").RainMm);
    }

    [Fact]
    public void A_dry_silence_over_midnight_is_dry_on_both_days()
    {
        var days = Days(hour => hour is >= 44 and < 52 ? double.NaN : 50);
        Assert.All(days, day => Assert.Equal(0, day.RainAt("yard").RainMm));
    }

    [Fact]
    public void Rain_in_a_silence_over_midnight_belongs_to_no_day()
    {
        var days = Days(hour => hour is >= 44 and < 52 ? double.NaN : hour < 44 ? 50 : 62);
        Assert.All(days, day => Assert.Null(day.RainAt("yard").RainMm));
        Assert.Contains(days[1].SetAside, s => s.Why.Contains("over midnight", StringComparison.Ordinal) && s.Why.Contains("12 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void A_silence_of_more_than_a_day_is_not_bridged()
    {
        var days = Days(hour => hour is >= 26 and < 52 ? double.NaN : 50);
        Assert.All(days, day => Assert.Null(day.RainAt("yard").RainMm));
    }

    [Fact]
    public void The_first_total_of_all_says_nothing()
    {
        var readings = Counted(hour => 500).Skip(24).ToList();
        var gauge = Scene.Days(Day, Day, ("yard", readings))[0].RainAt("yard");
        Assert.Equal(0, gauge.RainMm); // 23 of 24 hours: nine tenths of the day are known
        Assert.Empty(gauge.Falls);
    }

    private static GaugeDay Gauge(Func<int, double> total) => Days(total)[0].RainAt("yard");

    /// <summary>Two days; the totals begin a day before them, hour 24 is the first of <see cref="Day"/>.</summary>
    private static IReadOnlyList<WeatherDay> Days(Func<int, double> total) => Scene.Days(Day, Day.AddDays(1), ("yard", Counted(total)));

    private static List<Reading> Counted(Func<int, double> total) =>
        [.. Scene.Steady(Day.AddDays(-1), Day.AddDays(1)).Select((r, hour) => r with { RainMm = double.NaN, RainCounterMm = total(hour) })];
}
