using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Days on which the clock moves, and places where the sun does not set.</summary>
public sealed class DayLengthTests
{
    [Theory]
    [InlineData(3, 8, 23)]
    [InlineData(6, 10, 24)]
    [InlineData(11, 1, 25)]
    public void A_day_has_the_hours_that_its_clock_shows(int month, int dayOfMonth, int hours)
    {
        var scene = new WeatherScene();
        var date = new DateOnly(2026, month, dayOfMonth);
        var day = scene.Days(date, date, ("yard", scene.Steady(date.AddDays(-2), date.AddDays(1), rainMm: 1)))[0];
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(hours, day.RainAt("yard").RainMm);
        Assert.Equal(hours, day.RainAt("yard").Falls.Count);
        Assert.Equal(scene.Clock.DayEnd(date), day.RainAt("yard").Falls[^1].At);
    }

    [Theory]
    [InlineData(3, 8, 2, true)]
    [InlineData(3, 8, 3, false)]
    [InlineData(11, 1, 2, true)]
    [InlineData(11, 1, 3, false)]
    public void Nine_tenths_of_a_short_and_of_a_long_day(int month, int dayOfMonth, int missing, bool known)
    {
        var scene = new WeatherScene();
        var date = new DateOnly(2026, month, dayOfMonth);
        var readings = scene.Steady(date.AddDays(-2), date.AddDays(1), rainMm: 1).Where(r => r.Begin >= scene.Clock.DayStart(date).AddHours(missing)).ToList();
        var gauge = scene.Days(date, date, ("yard", readings))[0].RainAt("yard");
        Assert.Equal(known, gauge.RainMm is not null);
        Assert.Equal(known ? RainBasis.Measured : RainBasis.Unknown, gauge.Basis);
    }

    [Fact]
    public void Hours_that_begin_at_the_half_hour_belong_to_the_day_in_which_they_begin()
    {
        // India is 5:30 h ahead: whole hours of UTC begin at half past.
        var scene = new WeatherScene { Zone = "Asia/Kolkata", LatitudeDeg = 18.5, LongitudeDeg = 73.9 };
        var date = new DateOnly(2026, 6, 10);
        var readings = scene.Steady(date.AddDays(-2), date.AddDays(2), rainMm: 1)
            .Select(r => r with { Begin = r.Begin.AddMinutes(30), End = r.End.AddMinutes(30) }).ToList();
        var day = scene.Days(date, date, ("yard", Sunlit(readings)))[0];
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(24, day.RainAt("yard").RainMm);
    }

    [Theory]
    [InlineData(6, 21)]
    [InlineData(12, 21)]
    public void Midnight_sun_and_polar_night_give_a_number(int month, int dayOfMonth)
    {
        var scene = new WeatherScene { Zone = "Europe/Oslo", LatitudeDeg = 69.65, LongitudeDeg = 18.96, ElevationM = 10 };
        var date = new DateOnly(2026, month, dayOfMonth);
        var light = month == 6 ? 0.7 : 0;
        var readings = scene.Steady(date.AddDays(-2), date.AddDays(1)).Select(r => r with { SolarRadiationMJPerM2 = light }).ToList();
        var hourly = scene.Days(date, date, ("yard", readings))[0];
        Assert.Equal(EtoBasis.Hourly, hourly.Basis);
        Assert.InRange(hourly.EtoMm!.Value, 0, 8);

        var daily = scene.Days(date, date, ("yard", readings.Where((_, i) => i != 48 && i != 47).ToList()))[0];
        Assert.InRange(daily.EtoMm!.Value, 0, 8);
    }

    /// <summary>Readings whose radiation follows the sun of Pune instead of the scene's own hours.</summary>
    private static List<Reading> Sunlit(List<Reading> readings) =>
        [.. readings.Select(r => r with { SolarRadiationMJPerM2 = 0.5 * Sun.ExtraterrestrialRadiationMJPerM2(r.Begin, r.End, 18.5, 73.9, 161) })];
}
