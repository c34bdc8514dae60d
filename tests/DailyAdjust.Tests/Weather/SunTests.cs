using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

public sealed class SunTests
{
    private static readonly DateTimeOffset Noon = new(2026, 6, 1, 12, 0, 0, TimeSpan.Zero);

    [Theory]
    [InlineData(-54.8, -68.3)]
    [InlineData(-33.87, 151.2)]
    [InlineData(0, 0)]
    [InlineData(44.21, -98.32)]
    [InlineData(69.65, 18.96)]
    [InlineData(90, 180)]
    public void The_hours_of_a_day_add_up_to_the_day(double latitude, double longitude)
    {
        for (var dayOfYear = 1; dayOfYear <= 366; dayOfYear += 5)
        {
            var start = new DateTimeOffset(2026, 6, 1, 0, 0, 0, TimeSpan.Zero);
            var sum = Enumerable.Range(0, 24).Sum(h =>
                Sun.ExtraterrestrialRadiationMJPerM2(start.AddHours(h), start.AddHours(h + 1), latitude, longitude, dayOfYear));
            Assert.Equal(Sun.ExtraterrestrialRadiationMJPerM2Day(latitude, dayOfYear), sum, 1e-9);
        }
    }

    [Fact]
    public void Under_a_midnight_sun_the_day_has_24_hours_and_in_polar_night_none()
    {
        var summer = Sun.Day(new DateOnly(2026, 6, 21), 69.65, 18.96);
        var winter = Sun.Day(new DateOnly(2026, 12, 21), 69.65, 18.96);

        Assert.Equal(24, summer.DaylightHours, 1e-9);
        Assert.Equal(TimeSpan.FromHours(24), summer.Sunset - summer.Sunrise);
        Assert.Equal(0, winter.DaylightHours);
        Assert.Equal(winter.Sunrise, winter.Sunset);
        Assert.Equal(0, winter.ExtraterrestrialRadiationMJPerM2Day);
        Assert.Equal(0, Radiation.SolarFromSunshineMJPerM2(0, winter.DaylightHours, winter.ExtraterrestrialRadiationMJPerM2Day));
    }

    [Fact]
    public void South_of_the_equator_the_long_days_are_in_january()
    {
        var january = Sun.Day(new DateOnly(2026, 1, 15), -33.87, 151.2);
        var july = Sun.Day(new DateOnly(2026, 7, 15), -33.87, 151.2);
        Assert.True(january.DaylightHours > 14);
        Assert.True(july.DaylightHours < 10.5);
        Assert.True(january.ExtraterrestrialRadiationMJPerM2Day > 2 * july.ExtraterrestrialRadiationMJPerM2Day);
    }

    [Fact]
    public void Sunrise_and_sunset_are_whole_seconds()
    {
        for (var date = new DateOnly(2026, 1, 1); date.Year == 2026; date = date.AddDays(1))
        {
            var day = Sun.Day(date, 44.21, -98.32);
            Assert.Equal(0, day.Sunrise.Ticks % TimeSpan.TicksPerSecond);
            Assert.Equal(0, day.Sunset.Ticks % TimeSpan.TicksPerSecond);
            Assert.Equal(TimeSpan.Zero, day.Sunrise.Offset);
        }
    }

    [Theory]
    [InlineData("Pacific/Kiritimati", 1.87, -157.4)]
    [InlineData("Pacific/Apia", -13.8, -171.8)]
    [InlineData("Pacific/Auckland", -36.85, 174.76)]
    [InlineData("America/Chicago", 44.21, -98.32)]
    [InlineData("America/Adak", 51.88, -176.66)]
    public void The_sun_of_a_sites_date_stands_highest_on_that_date_of_its_clock(string zone, double latitude, double longitude)
    {
        var scene = new WeatherScene { Zone = zone, LatitudeDeg = latitude, LongitudeDeg = longitude };
        for (var date = new DateOnly(2026, 1, 1); date.Year == 2026; date = date.AddDays(13))
        {
            var day = Sun.Day(scene.Site, date);
            Assert.Equal(date, scene.Clock.DateOf(day.Sunrise + ((day.Sunset - day.Sunrise) / 2)));
        }
    }

    [Theory]
    [InlineData(90.5)]
    [InlineData(-90.5)]
    [InlineData(double.NaN)]
    public void A_latitude_that_does_not_exist_is_a_callers_bug(double latitude) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.DaylightHours(latitude, 1));

    [Theory]
    [InlineData(180.5)]
    [InlineData(-180.5)]
    [InlineData(double.NaN)]
    public void So_is_such_a_longitude(double longitude)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.Day(new DateOnly(2026, 6, 1), 44, longitude));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.SolarTimeAngleRad(Noon, longitude, 152));
    }

    [Theory]
    [InlineData(24.5)]
    [InlineData(-0.5)]
    public void So_is_an_interval_longer_than_a_day_or_of_less_than_nothing(double hours) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.ExtraterrestrialRadiationMJPerM2(Noon, Noon.AddHours(hours), 44, -98, 152));

    [Theory]
    [InlineData(0)]
    [InlineData(367)]
    public void A_day_that_no_year_has_has_no_sun(int dayOfYear)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.DeclinationRad(dayOfYear));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.InverseRelativeDistance(dayOfYear));
        Assert.Throws<ArgumentOutOfRangeException>(() => Sun.SeasonalCorrectionH(dayOfYear));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(366)]
    public void The_first_and_the_last_day_of_a_year_have_one(int dayOfYear) => Assert.InRange(Sun.DeclinationRad(dayOfYear), -0.41, 0.41);
}
