using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>Sensors that are odd over weeks: told, and their values count.</summary>
public sealed class DoubtTests
{
    private static readonly DateOnly Day = new(2026, 7, 10);
    private static readonly WeatherScene Scene = new();

    [Theory]
    [InlineData(79.9, 19, true)]
    [InlineData(80, 19, false)]
    [InlineData(79.9, 18, false)]
    public void Humidity_that_never_nears_saturation(double highest, int daysBefore, bool doubted)
    {
        Assert.Equal(doubted ? ["dawn_humidity"] : [], Doubts(daysBefore, d => d with { HumidityMaxPercent = highest }, r => r with { RelativeHumidityPercent = Math.Min(highest, r.RelativeHumidityPercent) }));
    }

    [Fact]
    public void One_moist_dawn_in_thirty_days_is_enough() =>
        Assert.Empty(Doubts(44, (d, back) => d with { HumidityMaxPercent = back == 29 ? 95 : 70 }, r => r with { RelativeHumidityPercent = Math.Min(70, r.RelativeHumidityPercent) }));

    [Theory]
    [InlineData(97, 9, true)]
    [InlineData(96.9, 9, false)]
    [InlineData(97, 8, false)]
    public void Humidity_that_never_leaves_saturation(double lowest, int daysBefore, bool doubted)
    {
        Assert.Equal(doubted ? ["dawn_humidity"] : [], Doubts(daysBefore, d => d with { HumidityMinPercent = lowest, HumidityMaxPercent = 100 }, r => r with { RelativeHumidityPercent = 99 }));
    }

    [Theory]
    [InlineData(0.849, 19, true)]
    [InlineData(0.85, 19, false)]
    [InlineData(0.849, 18, false)]
    public void Radiation_that_never_nears_a_clear_sky(double best, int daysBefore, bool doubted)
    {
        Assert.Equal(doubted ? ["low_radiation"] : [], Doubts(daysBefore, d => d with { SolarRatio = best }, r => r with { SolarRadiationMJPerM2 = r.SolarRadiationMJPerM2 * 0.7 }));
    }

    [Theory]
    [InlineData(1.05, 5, true)]
    [InlineData(1.15, 5, true)]
    [InlineData(1.049, 5, false)]
    [InlineData(1.05, 4, false)]
    public void Radiation_a_little_above_a_clear_sky_again_and_again(double ratio, int days, bool doubted)
    {
        Assert.Equal(doubted ? ["high_radiation"] : [], Doubts(44, (d, back) => d with { SolarRatio = back > 44 - days ? ratio : 0.9 }, r => r));
    }

    [Theory]
    [InlineData(41, 5, 0.61, true)]
    [InlineData(-41, 5, 0.61, true)]
    [InlineData(40, 5, 0.61, false)]
    [InlineData(41, 4, 0.61, false)]
    [InlineData(41, 5, 0.6, false)]
    public void A_clock_that_does_not_go_by_the_sun(double minutes, int days, double ratio, bool doubted)
    {
        Assert.Equal(doubted ? ["clock"] : [], Doubts(9, (d, back) => back <= days ? d with { SolarCentroidMinutes = minutes, SolarRatio = ratio } : d, r => r));
    }

    [Fact]
    public void Clouds_that_take_mornings_and_afternoons_in_turn_are_no_clock() =>
        Assert.Empty(Doubts(9, (d, back) => d with { SolarCentroidMinutes = back % 3 == 0 ? -50 : 50 }, r => r));

    // What the file's clock really was; what site.yaml says is local and end of the hour.
    [Theory]
    [InlineData(StampClock.Standard, StampMeaning.End, "60 minutes early", "\"clock: standard\" / \"stamp: start\" in site.yaml would fit")]
    [InlineData(StampClock.Local, StampMeaning.Start, "60 minutes early", "\"clock: standard\" / \"stamp: start\" in site.yaml would fit")]
    [InlineData(StampClock.Utc, StampMeaning.End, "300 minutes late", "\"clock: utc\" in site.yaml would fit")]
    public void A_wrong_clock_in_site_yaml_is_found_and_what_fits_is_said(StampClock clock, StampMeaning stamp, string much, string hint)
    {
        var off = clock switch { StampClock.Standard => -1.0, StampClock.Utc => 5, _ => 0 } + (stamp == StampMeaning.Start ? -1 : 0);
        var readings = HealthyWeather.Of(Scene, Day.AddDays(-13), Day.AddDays(1)).Select(r => r with { Begin = r.Begin.AddHours(off), End = r.End.AddHours(off) }).ToList();
        var source = WeatherScene.Source("yard") with { Accept = ["night_sun"] };
        var day = (Scene with { Stations = [source] }).Days(Day.AddDays(-11), Day, ("yard", readings))[^1];
        var doubt = Assert.Single(day.Doubts);
        Assert.Equal("clock", doubt.Check);
        Assert.Contains(much, doubt.Words, StringComparison.Ordinal);
        Assert.Contains(hint, doubt.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("dawn_humidity")]
    [InlineData("low_radiation solar_radiation")]
    [InlineData("high_radiation")]
    [InlineData("clock")]
    public void Overruled_a_doubt_is_not_told(string accept)
    {
        static StationDay Odd(StationDay d, int back) => d with { HumidityMaxPercent = 70, SolarRatio = back > 30 ? 0.7 : back > 20 ? 0.7 : 0.84, SolarCentroidMinutes = 55 };
        static StationDay High(StationDay d) => d with { HumidityMaxPercent = 70, SolarRatio = 1.1, SolarCentroidMinutes = 55 };
        var name = accept.Split(' ')[0];
        Func<StationDay, int, StationDay> past = name is "high_radiation" ? (d, _) => High(d) : Odd;
        Func<Reading, Reading> dim = r => r with { RelativeHumidityPercent = Math.Min(70, r.RelativeHumidityPercent), SolarRadiationMJPerM2 = r.SolarRadiationMJPerM2 * 0.8 };
        Assert.Contains(name, Doubts(44, past, dim));
        Assert.DoesNotContain(name, Doubts(44, past, dim, accept));
    }

    private static IEnumerable<string> Doubts(int daysBefore, Func<StationDay, StationDay> past, Func<Reading, Reading> today) => Doubts(daysBefore, (d, _) => past(d), today);

    /// <summary>The day's doubts after so many days before it that were healthy save for what is changed.</summary>
    private static IEnumerable<string> Doubts(int daysBefore, Func<StationDay, int, StationDay> past, Func<Reading, Reading> today, params string[] accept)
    {
        var scene = Scene with { Stations = [WeatherScene.Source("yard") with { Accept = accept }] };
        var before = Enumerable.Range(1, daysBefore).Select(back => new WeatherDay
        {
            Date = Day.AddDays(-back),
            Station = "yard",
            EtoMm = 5,
            Basis = EtoBasis.Hourly,
            Rain = [],
            Stations = [past(new StationDay("yard", 22, 95, 40, 0.9, 3), back)],
        }).Reverse().ToList();
        var readings = HealthyWeather.Of(scene, Day.AddDays(-2), Day.AddDays(1)).Select(today).ToList();
        return WeatherDays.Compute(scene.Inputs(Day, Day, [], ("yard", readings)) with { Before = before })[0].Doubts.Select(d => d.Check);
    }
}
