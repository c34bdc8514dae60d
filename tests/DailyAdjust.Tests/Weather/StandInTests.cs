using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>Where a station stands that helps out, and what sources say beside their values.</summary>
public sealed class StandInTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);

    private static readonly WeatherScene Scene = new()
    {
        Stations = [WeatherScene.Source("yard"), WeatherScene.Source("hill") with { LatitudeDeg = 44.21, LongitudeDeg = -98.07, ElevationM = 493.192 }],
    };

    [Fact]
    public void A_degree_of_latitude_is_111_km() =>
        // A sphere of 6371 km: 6371 km x π / 180.
        Assert.Equal(111_195, StandIn.GreatCircleM(44, -98, 45, -98), 0.5);

    [Fact]
    public void The_day_says_how_far_and_how_high_the_station_is_that_helped_out()
    {
        var days = Scene.Days(Day, Day, ("yard", []), ("hill", Scene.Steady(Day.AddDays(-2), Day.AddDays(1))));
        Assert.Equal(EtoBasis.OtherStation, days[0].Basis);

        // A quarter of a degree of longitude at 44.21° north: 111.195 km x 0.25 x cos 44.21° = 19.93 km.
        Assert.Equal("hill", days[0].StandIn!.Station);
        Assert.Equal(19_930, days[0].StandIn!.DistanceM!.Value, 10.0);
        Assert.Equal(100, days[0].StandIn!.HigherM!.Value, 1e-9);
    }

    [Fact]
    public void The_first_station_helps_nobody_out_and_an_unknown_place_is_not_made_up()
    {
        Assert.Null(Scene.Days(Day, Day, ("yard", Scene.Steady(Day.AddDays(-2), Day.AddDays(1))))[0].StandIn);
        var unknown = Scene with { Stations = [WeatherScene.Source("yard"), WeatherScene.Source("hill")] };
        Assert.Equal(new StandIn("hill", null, null), unknown.Days(Day, Day, ("hill", Scene.Steady(Day.AddDays(-2), Day.AddDays(1))))[0].StandIn);
    }

    [Fact]
    public void What_a_source_says_beside_its_values_is_kept_and_what_it_does_not_stand_by_is_set_aside()
    {
        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard", 0), WeatherScene.Source("other", 0)] };
        Reading Of(params ValueMark[] marks) => new()
        {
            Begin = scene.Clock.DayStart(Day),
            End = scene.Clock.DayEnd(Day),
            AirTemperatureMaxC = 25,
            AirTemperatureMinC = 12,
            RainMm = marks.Any(m => m.Kind == MarkKind.Trace) ? 0 : double.NaN,
            Marks = marks,
        };
        var day = scene.Days(
            Day, Day,
            ("yard", [Of(new(WeatherQuantity.WindSpeed, MarkKind.FailedAtSource, "99.9 X"), new(WeatherQuantity.Rain, MarkKind.Trace, "T"))]),
            ("other", [Of(new ValueMark(WeatherQuantity.Rain, MarkKind.EstimatedAtSource, "1.2 E"))]))[0];
        Assert.Equal(["rain: trace counts as 0", "wind_speed: failed a check of its source, not used"], day.Marks);
        var aside = Assert.Single(day.SetAside);
        Assert.Equal(("at_source", "wind_speed", "wind_speed 99.9 X"), (aside.Check, aside.Quantity, aside.What));
        Assert.Equal(0, day.RainAt("yard").RainMm);

        var several = scene.Days(Day, Day, ("yard", [Of(new ValueMark(WeatherQuantity.Rain, MarkKind.SeveralDays, "31.0 A"))]))[0];
        Assert.Null(several.RainAt("yard").RainMm);
        Assert.Equal("at_source", Assert.Single(several.SetAside).Check);
        Assert.Equal(["rain: a total of several days, not used"], several.Marks);
    }
}
