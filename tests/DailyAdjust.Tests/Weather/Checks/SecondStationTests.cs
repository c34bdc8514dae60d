using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>A temperature that leaves the course which it used to keep beside the second station's.</summary>
public sealed class SecondStationTests
{
    private static readonly DateOnly Day = new(2026, 7, 20);

    [Theory]
    [InlineData(6, 0, "")]
    [InlineData(6.1, 0, "yard")]
    [InlineData(-6.1, 0, "yard")]
    [InlineData(0, 6.1, "hill")]
    [InlineData(0, -6, "")]
    public void More_than_six_degrees_from_the_usual_difference_sets_aside_the_station_that_left_its_course(double yard, double hill, string wrong)
    {
        var day = Days(30, (yard, hill))[^1];
        Assert.Equal(wrong, string.Join(' ', day.SetAside.Select(s => s.Station)));
        Assert.Equal(EtoBasis.TemperatureOnly, day.Basis);
        Assert.Equal(wrong is "yard" ? "hill" : "yard", day.Station);
        Assert.All(day.SetAside, s => Assert.Equal(("second_station", "air_temperature"), (s.Check, s.Quantity)));
    }

    [Fact]
    public void Yesterday_belongs_to_the_week_that_a_station_is_held_against()
    {
        // A warm yesterday at both lifts the week's mean by 2 °C: the hill's low value is farther from it than the yard's high one.
        Assert.Equal("hill", Assert.Single(Days(30, (14, 14), (3, -3.5))[^1].SetAside).Station);
        Assert.Equal("yard", Assert.Single(Days(30, (0, 0), (3, -3.5))[^1].SetAside).Station);
    }

    [Fact]
    public void A_cold_day_at_both_is_weather() => Assert.Empty(Days(30, (-9, -9))[^1].SetAside);

    [Theory]
    [InlineData(6, 0)]
    [InlineData(7, 1)]
    public void It_takes_seven_known_days(int days, int found) => Assert.Equal(found, Days(days, (9, 0))[^1].SetAside.Count);

    [Fact]
    public void A_sensor_that_stays_wrong_does_not_become_the_measure()
    {
        var days = Days(30, [.. Enumerable.Repeat((8.0, 0.0), 12)]);
        Assert.All(days.Skip(30), d => Assert.Equal("yard", Assert.Single(d.SetAside).Station));
        Assert.All(days.Skip(30), d => Assert.Equal("hill", d.Station));
    }

    [Fact]
    public void Overruled_it_counts() => Assert.Empty(Days(30, accept: ["second_station"], last: (9, 0))[^1].SetAside);

    private static IReadOnlyList<WeatherDay> Days(int before, params (double Yard, double Hill)[] last) => Days(before, [], last);

    /// <summary>Two daily stations, the second 4 °C colder; on the last days each is off by so much.</summary>
    private static IReadOnlyList<WeatherDay> Days(int before, string[] accept, params (double Yard, double Hill)[] last)
    {
        var scene = new WeatherScene
        {
            Stations = [WeatherScene.Source("yard", 0) with { Accept = accept }, WeatherScene.Source("hill", 0)],
        };
        var through = Day.AddDays(last.Length - 1);
        IReadOnlyList<Reading> Of(double colder, Func<(double Yard, double Hill), double> off) => [.. Enumerable.Range(-before, before + last.Length).Select(i =>
        {
            var date = Day.AddDays(i);
            var wave = (i % 3) - colder + (i < 0 ? 0 : off(last[i]));
            return new Reading { Begin = scene.Clock.DayStart(date), End = scene.Clock.DayEnd(date), AirTemperatureMaxC = 27 + wave, AirTemperatureMinC = 13 + wave };
        })];
        return scene.Days(Day.AddDays(-before), through, ("yard", Of(0, l => l.Yard)), ("hill", Of(4, l => l.Hill)));
    }
}
