using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>Checks that hold readings against those around them: just inside, just outside, overruled.</summary>
public sealed class SeriesChecksTests
{
    private static readonly OneDay Hours = new();

    [Theory]
    [InlineData(60, "stuck air_temperature x8", 8)]
    [InlineData(60, "", 7)]
    [InlineData(10, "stuck air_temperature x48", 8)]
    public void Air_that_stands_still_for_8_hours_is_stuck(int minutes, string found, double hours)
    {
        var day = Hours with { Minutes = minutes };
        Reading Still(Reading r) => r with { AirTemperatureC = 17.77 };
        Assert.Equal(found, Found(day.With(6, 6 + hours, Still)));
        Assert.Equal("", Found((day with { Accept = ["stuck air_temperature"] }).With(6, 6 + hours, Still)));
        Assert.Equal("", Found((day with { Accept = ["stuck"] }).With(6, 6 + hours, Still)));
        Assert.Equal(found, Found((day with { Accept = ["stuck dew_point"] }).With(6, 6 + hours, Still)));
    }

    [Fact]
    public void A_value_missing_in_between_does_not_hide_a_stuck_sensor()
    {
        var day = Hours.With(6, 15, r => r with { AirTemperatureC = r.Begin == Hours.At(9) ? double.NaN : 17.77 });
        Assert.Equal("stuck air_temperature x8", Found(day));
    }

    [Fact]
    public void A_run_over_midnight_takes_what_belongs_to_the_day()
    {
        var day = Hours.With(-6, 4, r => r with { AirTemperatureC = 17.77 });
        Assert.Equal("stuck air_temperature x4", Found(day));
        Assert.Equal("unchanged for 10 h", day.SetAside[0].Why);
        Assert.Equal(Hours.At(0), day.SetAside[0].Begin);
    }

    [Theory]
    [InlineData(15, "")]
    [InlineData(16, "stuck air_temperature x16")]
    public void In_a_file_of_whole_degrees_Fahrenheit_air_may_stand_twice_as_long(double hours, string found)
    {
        double Whole(double celsius) => (Math.Round((celsius * 1.8) + 32) - 32) / 1.8;
        var readings = Hours.Healthy.Select(r => r with { AirTemperatureC = r.Begin >= Hours.At(4) && r.Begin < Hours.At(4 + hours) ? Whole(30) : Whole(r.AirTemperatureC) });
        Assert.Equal(found, Found(Hours.Of([.. readings])));
    }

    [Fact]
    public void Humidity_may_stand_still_where_the_air_is_saturated()
    {
        Reading At(Reading r, double humidity) => r with { RelativeHumidityPercent = humidity };
        Assert.Equal("", Found(Hours.With(2, 13, r => At(r, 96.9))));
        Assert.Equal("stuck relative_humidity x12", Found(Hours.With(2, 14, r => At(r, 96.9))));
        Assert.Equal("", Found(Hours.With(2, 14, r => At(r, 97))));
    }

    [Fact]
    public void A_logger_that_gives_extremes_alone_is_judged_by_their_middle()
    {
        Reading Extremes(Reading r, double most, double least) => r with { RelativeHumidityPercent = double.NaN, RelativeHumidityMaxPercent = most, RelativeHumidityMinPercent = least };
        Assert.Equal("stuck relative_humidity x12", Found(Hours.With(2, 14, r => Extremes(r, 99, 94.8))));
        Assert.Equal("", Found(Hours.With(2, 14, r => Extremes(r, 99, 95))));
    }

    [Fact]
    public void Dew_point_and_wind_may_stand_still_for_less_than_12_hours()
    {
        Reading Dew(Reading r) => r with { DewPointC = 4.321 };
        Reading Wind(Reading r, double speed) => r with { WindSpeedMPerS = speed };
        Assert.Equal("", Found(Hours.With(2, 13, Dew)));
        Assert.Equal("stuck dew_point x12", Found(Hours.With(2, 14, Dew)));
        Assert.Equal("", Found(Hours.With(2, 13, r => Wind(r, 0.51))));
        Assert.Equal("stuck wind_speed x12", Found(Hours.With(2, 14, r => Wind(r, 0.51))));
        Assert.Equal("", Found(Hours.With(2, 14, r => Wind(r, 0.5))));
    }

    [Fact]
    public void Radiation_does_not_stand_still_by_day()
    {
        // 11 to 14 h on the clock; the sun is highest at about 13:30.
        Assert.Equal("", Found(Hours.With(11, 13, r => Lit(r, 400))));
        Assert.Equal("stuck solar_radiation x3", Found(Hours.With(11, 14, r => Lit(r, 400))));
        Assert.Equal("stuck solar_radiation x3", Found(Hours.With(11, 14, r => Lit(r, 51))));
        Assert.Equal("", Found(Hours.With(11, 14, r => Lit(r, 50))));
        Assert.Equal("", Found(Hours.With(11, 16, r => Lit(r, 0))));
        Assert.Equal("stuck solar_radiation x6", Found(Hours.With(11, 17, r => Lit(r, 0))));
        Assert.Equal("stuck solar_radiation x6", Found(Hours.With(11, 17, r => Lit(r, 0.999))));
        Assert.Equal("", Found(Hours.With(11, 17, r => Lit(r, 1))));
        Assert.Equal("", Found((Hours with { Accept = ["stuck solar_radiation"] }).With(11, 17, r => Lit(r, 0))));
    }

    [Fact]
    public void A_value_far_from_both_neighbours_which_agree_is_a_spike()
    {
        double Middle(Func<Reading, double> value) => (value(Hours.Healthy.First(r => r.Begin == Hours.At(11))) + value(Hours.Healthy.First(r => r.Begin == Hours.At(13)))) / 2;
        var (air, humidity, wind) = (Middle(r => r.AirTemperatureC), Middle(r => r.RelativeHumidityPercent), Middle(r => r.WindSpeedMPerS));
        Reading Flat(Reading r) => r with { AirTemperatureC = air, RelativeHumidityPercent = humidity, WindSpeedMPerS = wind };
        string After(Func<Reading, Reading> change, params string[] accept) => Found((Hours with { Accept = accept }).With(11, 14, r => r.Begin == Hours.At(12) ? change(Flat(r)) : Flat(r)));

        Assert.Equal("", After(r => r with { AirTemperatureC = air + 9.9 }));
        Assert.Equal("spike air_temperature x1", After(r => r with { AirTemperatureC = air + 10.1 }));
        Assert.Equal("spike air_temperature x1", After(r => r with { AirTemperatureC = air - 10.1 }));
        Assert.Equal("", After(r => r with { AirTemperatureC = air + 10.1 }, "spike air_temperature"));
        Assert.Equal("", After(r => r with { RelativeHumidityPercent = humidity + 39.9 }));
        Assert.Equal("spike relative_humidity x1", After(r => r with { RelativeHumidityPercent = humidity + 40.1 }));
        Assert.Equal("", After(r => r with { RelativeHumidityPercent = humidity + 40.1, RainMm = 1 }));
        Assert.Equal("", After(r => r with { AirTemperatureC = air - 10.1, RainMm = 1 }));
        Assert.Equal("spike air_temperature x1", After(r => r with { AirTemperatureC = air + 10.1, RainMm = 1 }));
        Assert.Equal("", After(r => r with { WindSpeedMPerS = wind + 19.9 }));
        Assert.Equal("spike wind_speed x1", After(r => r with { WindSpeedMPerS = wind + 20.1 }));
    }

    [Fact]
    public void An_hour_that_is_missing_after_it_hides_no_spike_and_more_do()
    {
        double Air(int hour) => Hours.Healthy.First(r => r.Begin == Hours.At(hour)).AirTemperatureC;
        string Missing(int through) => Found(Hours.With(11, 17, r => r with { AirTemperatureC = r.Begin == Hours.At(12) ? Air(12) + 25 : r.Begin > Hours.At(12) && r.Begin <= Hours.At(through) ? double.NaN : r.AirTemperatureC }));
        Assert.Equal("spike air_temperature x1", Missing(13));
        Assert.Equal("", Missing(14));
    }

    [Fact]
    public void A_front_is_no_spike()
    {
        double At(double hour) => Hours.Healthy.First(r => r.Begin == Hours.At(hour)).AirTemperatureC;
        Assert.Equal("", Found(Hours.With(14, 26, r => r with { AirTemperatureC = r.AirTemperatureC - 12 })));
        Assert.Equal("spike air_temperature x1", Found(Hours.With(14, 16, r => r with { AirTemperatureC = r.Begin == Hours.At(14) ? At(13) - 10.1 : At(13) + 5 })));
        Assert.Equal("", Found(Hours.With(14, 16, r => r with { AirTemperatureC = r.Begin == Hours.At(14) ? At(13) - 10.1 : At(13) + 5.1 })));
        Assert.Equal("", Found(Hours.With(14, 16, r => r with { AirTemperatureC = At(13) - 11 })));
    }

    [Theory]
    [InlineData(3, "spike air_temperature x3")]
    [InlineData(4, "")]
    public void Values_within_half_an_hour_may_be_one_spike(int values, string found)
    {
        var day = Hours with { Minutes = 10 };
        Assert.Equal(found, Found(day.With(12, 12 + (values / 6.0) - 0.01, r => r with { AirTemperatureC = r.AirTemperatureC + 25 })));
    }

    [Fact]
    public void Wind_that_never_moves_all_day_is_set_aside()
    {
        Reading Still(Reading r, double speed) => r with { WindSpeedMPerS = speed };
        var day = Hours.With(0, 24, r => Still(r, 0));
        Assert.Equal("still_wind wind_speed x24", Found(day));
        Assert.Equal(EtoBasis.PartEstimated, day.Basis);
        Assert.Equal("still_wind wind_speed x24", Found(Hours.With(0, 24, r => Still(r, 0.5))));
        Assert.Equal("still_wind wind_speed x22", Found(Hours.With(0, 24, r => Still(r, r.Begin < Hours.At(2) ? double.NaN : 0))));
        Assert.Equal("", Found(Hours.With(0, 24, r => Still(r, r.Begin < Hours.At(3) ? double.NaN : 0))));
        Assert.Equal("", Found(Hours.With(0, 24, r => Still(r, r.Begin == Hours.At(3) ? 0.1 : 0))));
        Assert.Equal("", Found((Hours with { Accept = ["still_wind"] }).With(0, 24, r => Still(r, 0))));
    }

    [Fact]
    public void An_hour_may_be_a_third_above_a_clear_sky_and_a_little_more()
    {
        var begin = Hours.At(12);
        var ra = Sun.ExtraterrestrialRadiationMJPerM2(begin, begin.AddHours(1), Hours.LatitudeDeg, Hours.Scene.LongitudeDeg, Hours.Date.DayOfYear);
        var most = (1.35 * Radiation.ClearSkyMJPerM2(ra, Hours.Scene.ElevationM) * 1e6 / 3600) + 50;
        Assert.Equal("", Found(Hours.With(12, r => Lit(r, most * 0.995))));
        Assert.Equal("clear_sky solar_radiation x1", Found(Hours.With(12, r => Lit(r, most * 1.005))));
        Assert.Equal("", Found((Hours with { Accept = ["clear_sky"] }).With(12, r => Lit(r, most * 1.005))));
    }

    [Theory]
    [InlineData(60)]
    [InlineData(10)]
    public void A_day_may_be_a_seventh_above_a_clear_sky(int minutes)
    {
        var day = Hours with { Minutes = minutes };
        Reading Clear(Reading r, double ratio) => r with
        {
            SolarRadiationMJPerM2 = ratio * Radiation.ClearSkyMJPerM2(
                Sun.ExtraterrestrialRadiationMJPerM2(r.Begin, r.End, day.LatitudeDeg, day.Scene.LongitudeDeg, day.Date.DayOfYear), day.Scene.ElevationM),
        };
        var good = day.With(0, 24, r => Clear(r, 1.14));
        Assert.Equal("", Found(good));
        Assert.Equal(1.14, good.StationAt("yard")!.SolarRatio!.Value, 0.005);
        var bad = day.With(0, 24, r => Clear(r, 1.16));
        Assert.StartsWith("clear_sky solar_radiation x", Found(bad), StringComparison.Ordinal);
        Assert.Equal(EtoBasis.PartEstimated, bad.Basis);
        Assert.Equal(EtoBasis.Hourly, (day with { Accept = ["clear_sky solar_radiation"] }).With(0, 24, r => Clear(r, 1.16)).Basis);
    }

    [Fact]
    public void A_daily_sum_has_the_same_limit()
    {
        var rso = Radiation.ClearSkyMJPerM2(Sun.ExtraterrestrialRadiationMJPerM2Day(Hours.LatitudeDeg, Hours.Date.DayOfYear), Hours.Scene.ElevationM);
        Assert.Equal("", Found(Hours.Daily(r => r with { SolarRadiationMJPerM2 = 1.149 * rso })));
        Assert.Equal("clear_sky solar_radiation x1", Found(Hours.Daily(r => r with { SolarRadiationMJPerM2 = 1.151 * rso })));
        Assert.Equal("", Found((Hours with { Accept = ["clear_sky"] }).Daily(r => r with { SolarRadiationMJPerM2 = 1.151 * rso })));
    }

    private static Reading Lit(Reading r, double power) => r with { SolarRadiationMJPerM2 = power * (r.End - r.Begin).TotalSeconds / 1e6 };

    private static string Found(WeatherDay day) => string.Join(", ", day.SetAside.Select(s => $"{s.Check} {s.Quantity} x{s.Values}"));
}
