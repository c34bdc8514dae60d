using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>Every limit of a single value just inside and just outside, and overruled.</summary>
public sealed class ValueChecksTests
{
    // WMO-No. 305 / 488, error limits of surface data by latitude and half of the year, from memory: air and dew point, °C.
    [Theory]
    [InlineData(44.9, 1, -40, 50, -45, 35)]
    [InlineData(44.9, 7, -30, 60, -30, 40)]
    [InlineData(-44.9, 7, -40, 50, -45, 35)]
    [InlineData(-44.9, 1, -30, 60, -30, 40)]
    [InlineData(45, 12, -90, 40, -90, 35)]
    [InlineData(45, 4, -40, 50, -40, 40)]
    [InlineData(-60, 9, -90, 40, -90, 35)]
    [InlineData(60, 9, -40, 50, -40, 40)]
    public void Temperatures_have_the_limits_of_their_latitude_and_half_of_the_year(
        double latitude, int month, double airLeast, double airMost, double dewLeast, double dewMost)
    {
        var day = new OneDay { LatitudeDeg = latitude, Date = new DateOnly(2026, month, 20) };
        void Limits(Func<Reading, double, Reading> set, double least, double most, string quantity)
        {
            Assert.Empty(Found(day.Daily(r => set(r, most))));
            Assert.Empty(Found(day.Daily(r => set(r, least))));
            Assert.Contains($"limits {quantity}", Found(day.Daily(r => set(r, most + 0.1))));
            Assert.Contains($"limits {quantity}", Found(day.Daily(r => set(r, least - 0.1))));
        }

        Limits((r, v) => r with { AirTemperatureMaxC = v, AirTemperatureMinC = double.NaN }, airLeast, airMost, "air_temperature_max");
        Limits((r, v) => r with { AirTemperatureMinC = v, AirTemperatureMaxC = double.NaN }, airLeast, airMost, "air_temperature_min");
        Limits((r, v) => r with { DewPointC = v, AirTemperatureMaxC = double.NaN }, dewLeast, dewMost, "dew_point");
    }

    [Theory]
    [InlineData(75, 75.1)]
    [InlineData(0, -0.1)]
    public void Wind_has_limits(double inside, double outside)
    {
        var day = new OneDay();
        Assert.Empty(Found(day.Daily(r => r with { WindSpeedMPerS = inside })));
        Assert.Equal(["limits wind_speed"], Found(day.Daily(r => r with { WindSpeedMPerS = outside })));
        Assert.Equal(outside < 0 ? ["limits wind_speed"] : [], Found((day with { Accept = ["limits"] }).Daily(r => r with { WindSpeedMPerS = outside })));
    }

    [Theory]
    [InlineData(200, "")]
    [InlineData(200.1, "limits wind_speed")]
    public void Wind_beyond_any_storm_is_set_aside_even_where_limits_are_overruled(double speed, string found) =>
        Assert.Equal(found, string.Join(' ', Found((new OneDay { Accept = ["limits"] }).Daily(r => r with { WindSpeedMPerS = speed }))));

    [Fact]
    public void What_no_equation_bears_is_set_aside_even_where_limits_are_overruled()
    {
        var day = new OneDay { Accept = ["limits"] };
        Assert.Empty(Found(day.Daily(r => r with { AirTemperatureMaxC = 69 })));
        var broken = day.Daily(r => r with { AirTemperatureMaxC = 71, RainMm = -1, SunshineH = -1, ReferenceEtMm = 41 });
        Assert.Equal(["limits air_temperature_max", "limits rain", "limits sunshine", "limits reference_et"], Found(broken));
        Assert.Equal(EtoBasis.Open, broken.Basis);
        Assert.Null(broken.RainAt("yard").RainMm);
    }

    [Fact]
    public void Radiation_rain_and_sunshine_have_limits_of_their_interval()
    {
        var day = new OneDay { Minutes = 10 };
        Reading Sun(Reading r, double power) => r with { SolarRadiationMJPerM2 = power * 600 / 1e6 };
        Assert.Empty(Found(day.With(13, r => Sun(r, 1500))));
        Assert.Equal(["limits solar_radiation"], Found(day.With(13, r => Sun(r, 1501))));
        Assert.Empty(Found((day with { Accept = ["limits solar_radiation"] }).With(13, r => Sun(r, 1501))));
        Assert.Empty(Found(day.With(2, r => Sun(r, -20))));
        Assert.Equal(["limits solar_radiation"], Found(day.With(2, r => Sun(r, -20.1))));
        Assert.Equal(["limits rain"], Found(day.With(2, r => r with { RainMm = 150.1 })));
        Assert.Empty(Found((day with { Accept = ["limits rain"] }).With(2, r => r with { RainMm = 150.1 })));
        Assert.Empty(Found(day.With(13, r => r with { SunshineH = 0.219 })));
        Assert.Equal(["limits sunshine"], Found(day.With(13, r => r with { SunshineH = 0.221 })));
        Assert.Equal(["limits reference_et"], Found(day.With(13, r => r with { ReferenceEtMm = 0.34 })));
    }

    [Fact]
    public void Humidity_above_105_is_set_aside_and_down_to_100_counts_as_100()
    {
        var day = new OneDay();
        Assert.Empty(Found(day.With(4, r => r with { RelativeHumidityPercent = 105 })));
        Assert.Equal(day.With(4, r => r with { RelativeHumidityPercent = 100 }).EtoMm, day.With(4, r => r with { RelativeHumidityPercent = 105 }).EtoMm);
        Assert.Equal(["humidity relative_humidity"], Found(day.With(4, r => r with { RelativeHumidityPercent = 105.1 })));
        Assert.Equal(["humidity relative_humidity"], Found(day.With(4, r => r with { RelativeHumidityPercent = 0.4 })));

        var accepted = (day with { Accept = ["humidity"] }).With(4, r => r with { RelativeHumidityPercent = 130 });
        Assert.Empty(Found(accepted));
        Assert.Equal(day.With(4, r => r with { RelativeHumidityPercent = 100 }).EtoMm, accepted.EtoMm);

        // Overruled, only what is below nothing stays out.
        Assert.Empty(Found((day with { Accept = ["humidity", "spike"] }).With(4, r => r with { RelativeHumidityPercent = 0.4 })));
        Assert.Equal(["humidity relative_humidity"], Found((day with { Accept = ["humidity", "spike"] }).With(4, r => r with { RelativeHumidityPercent = -0.1 })));
    }

    [Fact]
    public void A_highest_temperature_below_the_lowest_sets_both_aside_and_overruled_counts_the_other_way_round()
    {
        var day = new OneDay();
        Reading Swapped(Reading r) => r with { AirTemperatureMaxC = 12, AirTemperatureMinC = 25 };
        Assert.Equal(["order air_temperature_max", "order air_temperature_min"], Found(day.Daily(Swapped)));
        Assert.Empty(Found(day.Daily(r => r with { AirTemperatureMaxC = 12, AirTemperatureMinC = 12 })));

        var accepted = (day with { Accept = ["order"] }).Daily(Swapped);
        Assert.Empty(Found(accepted));
        Assert.Equal(day.Daily(r => r).EtoMm, accepted.EtoMm);
    }

    [Fact]
    public void A_dew_point_may_be_a_degree_above_the_air()
    {
        var day = new OneDay();
        Assert.Empty(Found(day.With(4, r => r with { DewPointC = r.AirTemperatureC + 1 })));
        Assert.Equal(["dew_point dew_point"], Found(day.With(4, r => r with { DewPointC = r.AirTemperatureC + 1.1 })));
        Assert.Empty(Found((day with { Accept = ["dew_point"] }).With(4, r => r with { DewPointC = r.AirTemperatureC + 1.1 })));
    }

    [Fact]
    public void The_sun_does_not_shine_at_night()
    {
        var day = new OneDay();
        Reading Lit(Reading r, double power) => r with { SolarRadiationMJPerM2 = power * 3600 / 1e6 };
        Assert.Empty(Found(day.With(1, r => Lit(r, 50))));
        Assert.Equal(["night_sun solar_radiation"], Found(day.With(1, r => Lit(r, 51))));
        Assert.Empty(Found((day with { Accept = ["night_sun", "clear_sky"] }).With(1, r => Lit(r, 51))));
    }

    private static IEnumerable<string> Found(WeatherDay day) => day.SetAside.Select(s => $"{s.Check} {s.Quantity}");
}
