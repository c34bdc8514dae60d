using CsCheck;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Expected and open days, what is set aside, what is known when, and what a day may look at.</summary>
public sealed class WeatherDaysTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);
    private static readonly WeatherScene Scene = new();

    private static readonly MonthlyNormals Normals = new([1, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1], []);

    [Fact]
    public void A_day_without_weather_stays_open()
    {
        var day = Scene.Days(Day, Day)[0];
        Assert.Equal(EtoBasis.Open, day.Basis);
        Assert.Null(day.EtoMm);
        Assert.Equal("", day.Station);
    }

    [Fact]
    public void A_day_without_weather_is_expected_to_be_the_months_normal()
    {
        var day = (Scene with { Normals = Normals }).Days(Day, Day)[0];
        Assert.Equal(EtoBasis.Expected, day.Basis);
        Assert.Equal(5, day.EtoMm);
    }

    [Fact]
    public void A_day_without_weather_is_expected_to_be_the_mean_of_the_last_seven_known_days()
    {
        double[] known = [9, 1, 2, 3, 4, 5, 6, 8];
        var before = known.Select((eto, i) => Past(Day.AddDays(-10 + i), eto, EtoBasis.Hourly)).ToList();
        before.Add(Past(Day.AddDays(-2), 99, EtoBasis.Expected));
        before.Add(Past(Day.AddDays(-1), null, EtoBasis.Open));
        var inputs = (Scene with { Normals = Normals }).Inputs(Day, Day.AddDays(1), []) with { Before = before };

        var days = WeatherDays.Compute(inputs);
        Assert.All(days, d => Assert.Equal(EtoBasis.Expected, d.Basis));
        Assert.All(days, d => Assert.Equal(Math.Round(29.0 / 7, 6), d.EtoMm));
    }

    [Fact]
    public void Days_older_than_45_days_are_not_looked_at()
    {
        var inputs = Scene.Inputs(Day, Day, []) with { Before = [Past(Day.AddDays(-46), 6, EtoBasis.Hourly)] };
        Assert.Equal(EtoBasis.Open, WeatherDays.Compute(inputs)[0].Basis);
        Assert.Equal(6, WeatherDays.Compute(inputs with { Before = [Past(Day.AddDays(-45), 6, EtoBasis.Hourly)] })[0].EtoMm);
    }

    [Fact]
    public void Expected_eto_is_the_mean_and_from_the_second_day_on_the_normal_if_that_is_larger()
    {
        WeatherDay[] known = [Past(Day.AddDays(-2), 4, EtoBasis.Daily), Past(Day.AddDays(-1), 5, EtoBasis.TemperatureOnly), Past(Day, 100, EtoBasis.Hourly)];
        Assert.Equal(4.5, ExpectedEto.For(Day, Day, known, Normals));
        Assert.Equal(5, ExpectedEto.For(Day.AddDays(1), Day, known, Normals));
        Assert.Equal(6, ExpectedEto.For(new DateOnly(2026, 7, 1), Day, known, Normals));
        Assert.Equal(4.5, ExpectedEto.For(new DateOnly(2026, 9, 1), Day, known, Normals));
        Assert.Equal(4.5, ExpectedEto.For(Day.AddDays(1), Day, known, null));
        Assert.Equal(5, ExpectedEto.For(Day, Day, [], Normals));
        Assert.Null(ExpectedEto.For(Day, Day, [], null));
    }

    [Fact]
    public void What_a_sensor_cannot_have_measured_is_set_aside_with_its_reason()
    {
        var start = Scene.Clock.DayStart(Day);
        var readings = Scene.Steady(Day.AddDays(-2), Day.AddDays(1)).Select(r =>
            r.Begin == start.AddHours(4) ? r with { AirTemperatureC = 85, SolarRadiationMJPerM2 = 2 }
            : r.Begin == start.AddHours(14) ? r with { RelativeHumidityPercent = 130, RainMm = -1 }
            : r).ToList();
        var day = Scene.Days(Day, Day, ("yard", readings))[0];

        Assert.Equal(
            [
                ("air_temperature 85 °C", "outside -30 to 60 °C"),
                ("solar_radiation 555.556 W/m²", "the sun was below the horizon: is the clock of the file right?"),
                ("rain -1 mm", "outside 0 to 305 mm in 60 minutes"),
                ("relative_humidity 130 %", "outside 0.5 to 105 %"),
            ],
            day.SetAside.Select(s => (s.What, s.Why)));
        Assert.All(day.SetAside, s => Assert.Equal("yard", s.Station));
        Assert.Equal(26, day.AirTemperatureMaxC);
        Assert.Equal(EtoBasis.Hourly, day.Basis);
        Assert.Equal(
            ["air_temperature: 1 h interpolated", "relative_humidity: 1 h interpolated", "solar_radiation: 1 h interpolated"], day.Estimated);
        Assert.Equal(0, day.RainAt("yard").RainMm);
    }

    [Fact]
    public void A_wet_humidity_sensor_and_a_cold_pyranometer_are_put_right_and_the_first_is_marked()
    {
        var steady = Scene.Steady(Day.AddDays(-2), Day.AddDays(1));
        var night = Scene.Clock.DayStart(Day).AddHours(2);
        Reading Wet(Reading r, double humidity) => r.Begin == night ? r with { RelativeHumidityPercent = humidity } : r;
        Reading Cold(Reading r) => r.SolarRadiationMJPerM2 > 0 ? r : r with { SolarRadiationMJPerM2 = -0.01 };

        var dull = Scene.Days(Day, Day, ("yard", [.. steady.Select(r => Wet(r, 100))]))[0];
        var day = Scene.Days(Day, Day, ("yard", [.. steady.Select(r => Cold(Wet(r, 104)))]))[0];
        Assert.Equal(dull.EtoMm, day.EtoMm);
        Assert.Equal(["relative_humidity: above 100 % counted as 100 % (1 readings)"], day.Estimated);
        Assert.Empty(day.SetAside);
    }

    [Fact]
    public void A_daily_radiation_above_the_top_of_the_atmosphere_is_set_aside()
    {
        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard", 0)] };
        var reading = new Reading
        {
            Begin = scene.Clock.DayStart(Day),
            End = scene.Clock.DayEnd(Day),
            AirTemperatureMaxC = 10,
            AirTemperatureMinC = 20,
            SolarRadiationMJPerM2 = 60,
        };
        var day = scene.Days(Day, Day, ("yard", [reading]))[0];
        Assert.Equal(3, day.SetAside.Count);
        Assert.Equal(EtoBasis.Open, day.Basis);
    }

    [Fact]
    public void Readings_that_end_after_the_instant_are_not_used_even_if_they_are_there()
    {
        var readings = Scene.Steady(Day.AddDays(-2), Day.AddDays(1), rainMm: 1);
        var noon = Scene.Clock.ToInstant(Day, new TimeOnly(12, 0));
        var known = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { ["yard"] = readings };

        Assert.Equal(noon, WeatherDays.Newest(Scene.Site, noon, known)?.End);
        Assert.Equal(noon.AddHours(-1), WeatherDays.Newest(Scene.Site, noon.AddMinutes(-1), known)?.End);
        Assert.Null(WeatherDays.Newest(Scene.Site, noon.AddDays(-30), known)?.End);

        var day = WeatherDays.Compute(Scene.Inputs(Day, Day, [], ("yard", readings)) with { AsOf = noon })[0];
        Assert.Null(day.RainAt("yard").RainMm);
        Assert.Equal(12, day.RainAt("yard").MeasuredPartMm);
        Assert.Equal(EtoBasis.Open, day.Basis);
    }

    [Fact]
    public void A_row_without_any_value_does_not_make_the_weather_new()
    {
        var empty = new Reading { Begin = Scene.Clock.DayStart(Day), End = Scene.Clock.DayStart(Day).AddHours(1) };
        var known = new Dictionary<string, IReadOnlyList<Reading>>(StringComparer.Ordinal) { ["yard"] = [empty] };
        Assert.Null(WeatherDays.Newest(Scene.Site, empty.End, known));
        known["yard"] = [empty with { RainMm = 0 }];
        Assert.Equal(new NewestReading("yard", empty.End), WeatherDays.Newest(Scene.Site, empty.End, known));
    }

    [Fact]
    public void Two_files_that_tell_of_the_same_hours_do_not_rain_twice()
    {
        var hours = Scene.Steady(Day.AddDays(-2), Day.AddDays(1), rainMm: 1);
        var minutes = Scene.Steady(Day.AddDays(-2), Day.AddDays(1), 10, rainMm: 1.0 / 6);
        var both = ReadingMerge.Merge([minutes, hours]);
        Assert.True(both.Count > hours.Count);

        var day = Scene.Days(Day, Day, ("yard", both))[0];
        Assert.Equal(24, day.RainAt("yard").RainMm!.Value, 1e-9);
        Assert.Equal(Scene.Days(Day, Day, ("yard", hours))[0].EtoMm, day.EtoMm);
    }

    [Fact]
    public void A_day_looks_at_thirty_hours_before_and_three_hours_after_itself()
    {
        var all = Scene.Steady(Day.AddDays(-9), Day.AddDays(5)).Select((r, i) =>
            i % 7 == 0 ? r with { WindSpeedMPerS = double.NaN } : r with { SolarRadiationMJPerM2 = r.SolarRadiationMJPerM2 * (0.4 + (0.1 * (i % 5))) }).ToList();
        var few = all.Where(r => r.Begin >= Scene.Clock.DayStart(Day).AddHours(-30) && r.End <= Scene.Clock.DayEnd(Day).AddHours(3)).ToList();
        var whole = Scene.Days(Day.AddDays(-5), Day, ("yard", all))[^1];
        var alone = Scene.Days(Day, Day, ("yard", few))[0];
        Assert.Equal(whole.EtoMm, alone.EtoMm);
        Assert.Equal(whole.Estimated, alone.Estimated);
    }

    [Fact]
    public void Whatever_is_missing_a_day_is_a_number_of_known_basis_or_open()
    {
        var steady = Scene.Steady(Day.AddDays(-1), Day);
        var cell = Gen.Select(Gen.Int[0, steady.Count - 1], Gen.Int[0, 5]);
        cell.Array[0, 200].Sample(holes =>
        {
            var readings = steady.ToArray();
            foreach (var (row, column) in holes)
            {
                readings[row] = column switch
                {
                    0 => readings[row] with { AirTemperatureC = double.NaN },
                    1 => readings[row] with { RelativeHumidityPercent = double.NaN },
                    2 => readings[row] with { WindSpeedMPerS = double.NaN },
                    3 => readings[row] with { SolarRadiationMJPerM2 = double.NaN },
                    4 => readings[row] with { RainMm = double.NaN },
                    _ => readings[row] with { AirTemperatureC = 26.5 },
                };
            }

            var day = Scene.Days(Day, Day, ("yard", readings))[0];
            var gauge = day.RainAt("yard");
            return (day.Basis == EtoBasis.Open) == day.EtoMm is null
                && day.EtoMm is null or (>= 0 and < 15)
                && (gauge.Basis == RainBasis.Unknown) == gauge.RainMm is null
                && day.Estimated.SequenceEqual(day.Estimated.Order(StringComparer.Ordinal), StringComparer.Ordinal);
        }, iter: 500);
    }

    private static WeatherDay Past(DateOnly date, double? etoMm, EtoBasis basis) => new()
    {
        Date = date,
        Station = "yard",
        EtoMm = etoMm,
        Basis = basis,
        Rain = [],
    };
}
