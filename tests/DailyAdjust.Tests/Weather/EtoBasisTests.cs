using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>How a day's reference ET is known, from whole hours down to nothing.</summary>
public sealed class EtoBasisTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);
    private static readonly WeatherScene Scene = new();

    private static readonly WeatherScene TwoStations = new()
    {
        Stations = [WeatherScene.Source("yard"), WeatherScene.Source("hill")],
    };

    private static readonly IReadOnlyList<Reading> Steady = Scene.Steady(Day.AddDays(-2), Day.AddDays(1));

    [Fact]
    public void Whole_hours_give_the_hourly_equation()
    {
        var day = One(Steady);
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal("yard", day.Station);
        Assert.InRange(day.EtoMm!.Value, 3, 8);
        Assert.Empty(day.Estimated);
        Assert.Equal(26, day.AirTemperatureMaxC);
        Assert.Equal(16, day.AirTemperatureMinC);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(30)]
    public void Finer_readings_of_steady_weather_give_what_hours_give(int minutes)
    {
        var fine = new WeatherScene { Stations = [WeatherScene.Source("yard", minutes)] };
        var day = fine.Days(Day, Day, ("yard", fine.Steady(Day.AddDays(-2), Day.AddDays(1), minutes)))[0];
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(One(Steady).EtoMm, day.EtoMm);
    }

    [Fact]
    public void Three_missing_hours_are_interpolated_and_named()
    {
        var day = One(Without(Steady, 10, 13, r => r with { WindSpeedMPerS = double.NaN }));
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(One(Steady).EtoMm!.Value, day.EtoMm!.Value, 1e-6);
        Assert.Equal(["wind_speed: 3 h interpolated"], day.Estimated);
    }

    [Fact]
    public void Interpolation_runs_on_a_straight_line_between_the_known_values()
    {
        Sample Hour(int hour, double value) => new(
            new DateTimeOffset(2026, 6, 10, hour, 0, 0, TimeSpan.Zero), new DateTimeOffset(2026, 6, 10, hour + 1, 0, 0, TimeSpan.Zero), value, false);
        var filled = ShortGaps.Fill([Hour(3, 10), Hour(7, 18), Hour(12, 0)], TimeSpan.FromHours(1));
        Assert.Equal([10, 12, 14, 16, 18, 0], filled.Select(s => s.Value));
        Assert.Equal([false, true, true, true, false, false], filled.Select(s => s.Interpolated));
    }

    [Fact]
    public void A_longer_gap_over_midnight_leaves_the_daily_equation_to_both_days()
    {
        var midnight = Scene.Clock.DayEnd(Day);
        var days = Scene.Days(Day, Day.AddDays(1), ("yard",
        [
            .. Scene.Steady(Day.AddDays(-2), Day.AddDays(1))
                .Where(r => r.Begin < midnight.AddHours(-2) || r.Begin >= midnight.AddHours(2)),
        ]));
        Assert.All(days, day => Assert.Equal(EtoBasis.Daily, day.Basis));
        Assert.All(days, day => Assert.InRange(day.EtoMm!.Value, 3, 8));
    }

    [Fact]
    public void The_daily_equation_gets_the_days_extremes_means_and_sum()
    {
        var midnight = Scene.Clock.DayEnd(Day);
        var day = One([.. Steady.Where(r => r.Begin < midnight.AddHours(-2) || r.Begin >= midnight.AddHours(2))]);
        var solar = 10 * 600 * 3600 / 1e6;
        var expected = ReferenceEtDaily.EtoMm(new DailyAir
        {
            AirTemperatureMaxC = 26,
            AirTemperatureMinC = 16,
            VapourPressureKPa = Atmosphere.VapourPressureFromExtremesKPa(26, 16, 60, 60),
            WindSpeed2mMPerS = 2.5,
            SolarRadiationMJPerM2Day = solar,
            ExtraterrestrialRadiationMJPerM2Day = Sun.ExtraterrestrialRadiationMJPerM2Day(Scene.LatitudeDeg, Day.DayOfYear),
            ElevationM = Scene.ElevationM,
        });
        Assert.Equal(expected, day.EtoMm!.Value, 1e-6);
    }

    [Fact]
    public void Four_missing_hours_of_wind_are_more_than_a_tenth_of_the_day()
    {
        var day = One(Without(Steady, 9, 13, r => r with { WindSpeedMPerS = double.NaN }));
        Assert.Equal(EtoBasis.PartEstimated, day.Basis);
        Assert.Equal(["wind_speed: taken as 2 m/s"], day.Estimated);
    }

    [Fact]
    public void Missing_daylight_is_made_up_for_in_proportion_to_the_sun()
    {
        // The sun sets at about 21:10 on that clock.
        var midnight = Scene.Clock.DayEnd(Day);
        var day = One(Edit(Steady, r => r.Begin >= midnight.AddHours(-3) && r.Begin < midnight.AddHours(2), r => r with { SolarRadiationMJPerM2 = double.NaN }));
        Assert.Equal(EtoBasis.Daily, day.Basis);
        Assert.Equal(["solar_radiation: 1 h of daylight missing, made up for"], day.Estimated);
    }

    [Fact]
    public void Without_radiation_the_range_of_temperature_stands_in()
    {
        var none = Edit(Steady, _ => true, r => r with { SolarRadiationMJPerM2 = double.NaN });
        var inland = One(none);
        Assert.Equal(EtoBasis.PartEstimated, inland.Basis);
        Assert.Equal(["solar_radiation: from the range of temperature"], inland.Estimated);

        var coast = new WeatherScene { Stations = [WeatherScene.Source("yard") with { Coastal = true }] }.Days(Day, Day, ("yard", none))[0];
        Assert.True(coast.EtoMm > inland.EtoMm);
    }

    [Fact]
    public void Sunshine_comes_before_the_range_of_temperature()
    {
        var sunny = One(Edit(Steady, _ => true, r => r with { SunshineH = r.SolarRadiationMJPerM2 > 0 ? 1 : 0, SolarRadiationMJPerM2 = double.NaN }));
        Assert.Equal(EtoBasis.PartEstimated, sunny.Basis);
        Assert.Equal(["solar_radiation: from sunshine"], sunny.Estimated);
    }

    [Fact]
    public void Dew_point_serves_where_there_is_no_humidity()
    {
        double Dew(double t)
        {
            var x = Math.Log(0.6 * Math.Exp(17.27 * t / (t + 237.3)));
            return 237.3 * x / (17.27 - x);
        }

        var day = One(Edit(Steady, _ => true, r => r with { RelativeHumidityPercent = double.NaN, DewPointC = Dew(r.AirTemperatureC) }));
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(One(Steady).EtoMm!.Value, day.EtoMm!.Value, 2e-6);
    }

    [Fact]
    public void Temperatures_alone_give_hargreaves_samani()
    {
        var day = Daily(r => r with { AirTemperatureMaxC = 27, AirTemperatureMinC = 14 });
        Assert.Equal(EtoBasis.TemperatureOnly, day.Basis);
        var ra = Sun.ExtraterrestrialRadiationMJPerM2Day(Scene.LatitudeDeg, Day.DayOfYear);
        Assert.Equal(HargreavesSamani.EtoMm(27, 14, ra), day.EtoMm!.Value, 1e-6);
    }

    [Fact]
    public void Temperatures_as_far_apart_as_their_limits_allow_stop_nothing()
    {
        Assert.Equal(EtoBasis.TemperatureOnly, Daily(r => r with { AirTemperatureMaxC = 60, AirTemperatureMinC = -30 }).Basis);
        Assert.Equal(EtoBasis.PartEstimated, Daily(r => r with { AirTemperatureMaxC = 60, AirTemperatureMinC = -30, WindSpeedMPerS = 2 }).Basis);
    }

    [Fact]
    public void A_daily_station_with_all_inputs_is_daily_and_each_missing_one_is_named()
    {
        var full = Daily(Full);
        Assert.Equal(EtoBasis.Daily, full.Basis);
        Assert.Empty(full.Estimated);

        var bare = Daily(r => Full(r) with { RelativeHumidityMaxPercent = double.NaN, WindSpeedMPerS = double.NaN });
        Assert.Equal(EtoBasis.PartEstimated, bare.Basis);
        Assert.Equal(["relative_humidity: dew point taken as the lowest temperature", "wind_speed: taken as 2 m/s"], bare.Estimated);

        Reading Full(Reading r) => r with
        {
            AirTemperatureMaxC = 27,
            AirTemperatureMinC = 14,
            RelativeHumidityMaxPercent = 90,
            RelativeHumidityMinPercent = 45,
            WindSpeedMPerS = 2,
            SolarRadiationMJPerM2 = 22,
        };
    }

    [Fact]
    public void The_stations_own_column_is_used_only_if_the_site_says_so()
    {
        var own = Edit(Steady, _ => true, r => r with { ReferenceEtMm = 0.25 });
        Assert.Equal(EtoBasis.Hourly, One(own).Basis);

        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard") with { UseSuppliedEto = true }] };
        var day = scene.Days(Day, Day, ("yard", own))[0];
        Assert.Equal(EtoBasis.Supplied, day.Basis);
        Assert.Equal(6, day.EtoMm!.Value, 1e-6);
        Assert.Equal(EtoBasis.Hourly, scene.Days(Day, Day, ("yard", Steady))[0].Basis);
    }

    [Fact]
    public void A_complete_other_station_comes_before_any_estimate()
    {
        var broken = Edit(Steady, _ => true, r => r with { WindSpeedMPerS = double.NaN });
        var day = TwoStations.Days(Day, Day, ("yard", broken), ("hill", Steady))[0];
        Assert.Equal(EtoBasis.OtherStation, day.Basis);
        Assert.Equal("hill", day.Station);
        Assert.Equal(One(Steady).EtoMm, day.EtoMm);
    }

    [Fact]
    public void Where_no_station_is_complete_the_first_that_can_be_estimated_is_used()
    {
        var windless = Edit(Steady, _ => true, r => r with { WindSpeedMPerS = double.NaN });
        var day = TwoStations.Days(Day, Day, ("yard", Edit(Steady, _ => true, r => r with { AirTemperatureC = double.NaN })), ("hill", windless))[0];
        Assert.Equal(EtoBasis.PartEstimated, day.Basis);
        Assert.Equal("hill", day.Station);
    }

    [Fact]
    public void A_dewy_overcast_day_is_never_below_zero()
    {
        var wet = Edit(Steady, _ => true, r => r with { RelativeHumidityPercent = 100, SolarRadiationMJPerM2 = 0, AirTemperatureC = 2 });
        var day = One(wet);
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(0, day.EtoMm);
    }

    [Fact]
    public void Each_date_runs_under_its_own_version_of_the_site()
    {
        var tall = Scene.Site with { Weather = Scene.Site.Weather with { Stations = [WeatherScene.Source("yard") with { WindHeightM = 10 }] } };
        var days = WeatherDays.Compute(Scene.Inputs(Day.AddDays(-1), Day, [], ("yard", Scene.Steady(Day.AddDays(-3), Day.AddDays(1)))) with
        {
            Versions = [new SiteVersion(new DateOnly(2026, 1, 1), Scene.Site), new SiteVersion(Day, tall)],
        });
        Assert.Equal(days[0].EtoMm!.Value, One(Steady).EtoMm!.Value, 0.05);
        Assert.True(days[1].EtoMm < days[0].EtoMm - 0.1);
    }

    private static WeatherDay One(IReadOnlyList<Reading> readings) => Scene.Days(Day, Day, ("yard", readings))[0];

    private static WeatherDay Daily(Func<Reading, Reading> fill)
    {
        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard", 0)] };
        var reading = fill(new Reading { Begin = scene.Clock.DayStart(Day), End = scene.Clock.DayEnd(Day) });
        return scene.Days(Day, Day, ("yard", [reading]))[0];
    }

    private static IReadOnlyList<Reading> Edit(IReadOnlyList<Reading> readings, Func<Reading, bool> which, Func<Reading, Reading> edit) =>
        [.. readings.Select(r => which(r) ? edit(r) : r)];

    private static IReadOnlyList<Reading> Without(IReadOnlyList<Reading> readings, int fromHour, int toHour, Func<Reading, Reading> edit)
    {
        var start = Scene.Clock.DayStart(Day);
        return Edit(readings, r => r.Begin >= start.AddHours(fromHour) && r.Begin < start.AddHours(toHour), edit);
    }
}
