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
    public void A_total_that_dips_and_comes_back_is_wrong_and_no_rain_fell()
    {
        var day = Days(hour => hour is >= 30 and < 34 ? 100 - (hour % 2 * 3) : 100)[0];
        Assert.Equal(2, day.SetAside.Count(s => s.Check is "rain_total" && s.Why.Contains("it can only grow", StringComparison.Ordinal)));
        Assert.Equal(0, day.RainAt("yard").RainMm);
    }

    [Theory]
    [InlineData(1.2, 100d, 101d, 60d, 101.2)]
    [InlineData(0d, 100d, -1d, 100d)] // an undeclared mark
    [InlineData(0.2, 100d, 900d, 100.2)]
    [InlineData(1.2, 100d, 101d, 0d, 101.2)] // the logger lost its memory for a row
    [InlineData(2.5, 100d, 101d, 0d, 0.5, 1.5)] // and for good
    [InlineData(3d, 100d, 102d, 102.5, 103d)]
    [InlineData(0.3, 100d, 60d, 0d, 0.3)] // falls on: what lies between is wrong
    public void A_wrong_total_is_never_rain(double rainMm, params double[] totals)
    {
        var day = Days(hour => hour < 30 ? totals[0] : totals[Math.Min(hour - 30, totals.Length - 1)])[0];
        Assert.Equal(rainMm, day.RainAt("yard").RainMm!.Value, 9);
    }

    [Fact]
    public void A_counter_that_begins_every_midnight_keeps_the_storm_of_that_hour()
    {
        // Hours to 23, 24, 25: 0, 2 | 1.5, 3.
        var days = Days(hour => hour < 46 ? 0 : hour < 47 ? 0 : hour < 48 ? 2 : hour < 49 ? 1.5 : 3);
        Assert.Equal([2.0, 3.0], days.Select(d => d.RainAt("yard").RainMm!.Value));
    }

    [Fact]
    public void A_short_silence_over_midnight_in_which_it_rained_is_asked_for_on_both_days()
    {
        // 10-minute totals; 23:50 to 00:10 is missing, and 30 mm fell: each day is 98 % known.
        var midnight = Scene.Clock.DayEnd(Day);
        var readings = Counted(_ => 50)
            .SelectMany(hour => Enumerable.Range(0, 6).Select(i => hour with { Begin = hour.Begin.AddMinutes(10 * i), End = hour.Begin.AddMinutes(10 * (i + 1)) }))
            .Where(r => r.End <= midnight.AddMinutes(-10) || r.Begin >= midnight.AddMinutes(10))
            .Select(r => r.Begin >= midnight ? r with { RainCounterMm = 80 } : r)
            .ToList();
        var days = Scene.Days(Day, Day.AddDays(1), ("yard", readings));
        Assert.All(days, day => Assert.Equal((null, RainBasis.Unknown), (day.RainAt("yard").RainMm, day.RainAt("yard").Basis)));
    }

    [Fact]
    public void What_comes_later_changes_nothing_about_what_was_known_then()
    {
        // The counter is silent from 21:00 to 05:30 and has not grown: at 05:00 yesterday is not known.
        var readings = Counted(hour => hour is >= 45 and < 53 ? double.NaN : 50);
        var five = Scene.Clock.DayEnd(Day).AddHours(5);
        WeatherDay At(IReadOnlyList<Reading> known) => WeatherDays.Compute(Scene.Inputs(Day, Day, [], ("yard", known)) with { AsOf = five })[0];
        var (then, later) = (At([.. readings.Where(r => r.End <= five)]), At(readings));
        Assert.Null(then.RainAt("yard").RainMm);
        Assert.Equal(then.RainAt("yard").RainMm, later.RainAt("yard").RainMm);
        Assert.Equal(0, Scene.Days(Day, Day, ("yard", readings))[0].RainAt("yard").RainMm);
    }

    [Fact]
    public void Whatever_goes_wrong_with_the_totals_no_rain_is_made()
    {
        // True rain, and totals with glitches, silences and beginnings by chance: what is booked is never more than what fell.
        for (var seed = 0; seed < 400; seed++)
        {
            var dice = new Random(seed);
            double total = dice.Next(3) == 0 ? 0 : dice.Next(500), fell = 0;
            var glitch = false;
            var day = Days(hour =>
            {
                var mm = dice.Next(6) == 0 ? Math.Round(dice.NextDouble() * 8, 1) : 0;
                var begins = dice.Next(60) == 0;
                if (hour is >= 24 and < 48)
                {
                    fell += mm;
                }

                total = begins ? 0 : total + mm;
                glitch = !glitch && dice.Next(15) == 0;
                return glitch ? (dice.Next(4) switch { 0 => -1, 1 => double.NaN, 2 => total + 300, _ => total / 3 }) : total;
            })[0].RainAt("yard");
            Assert.True(day.RainMm is null || day.RainMm <= fell + 1e-6, $"seed {seed}: {day.RainMm} booked of {fell} mm");
        }
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
