using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Morning;

/// <summary>What the checks of weather say on the sheet.</summary>
public sealed class SensorPartTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);

    [Fact]
    public void Values_set_aside_are_counted_by_station_quantity_and_check()
    {
        var days = new[]
        {
            Of(Day.AddDays(-1), Aside("yard", "wind_speed 2.2 m/s", "unchanged for 20 h", "stuck", 14), Aside("yard", "rain -1 mm", "outside 0 to 305 mm in 60 minutes", "limits", 1)),
            Of(Day, Aside("yard", "wind_speed 2.2 m/s", "unchanged for 21 h", "stuck", 6)),
        };
        Assert.Equal(
            [
                "Station yard: 20 values of wind speed set aside by the check for a value that stands still from Tue 9 June to Wed 10 June (the last 2.2 m/s, unchanged for 21 h).",
                "Station yard: 1 value of rain set aside by the check for impossible values on Tue 9 June (-1 mm, outside 0 to 305 mm in 60 minutes).",
            ],
            SensorPart.SetAside(Values(days), UnitSystem.Metric).Select(s => s.ToString()));
    }

    [Fact]
    public void Values_are_said_in_the_sites_units()
    {
        var day = Of(Day, Aside("yard", "wind_speed 40.2336 m/s", "more than 20 m/s from the values before and after it", "spike", 1), Aside("yard", "rain 15.24 mm", "outside 0 to 7.62 mm in 60 minutes", "limits", 1));
        Assert.Equal(
            [
                "Station yard: 1 value of rain set aside by the check for impossible values on Wed 10 June (0.60 in, outside 0 to 0.30 in in 60 minutes).",
                "Station yard: 1 value of wind speed set aside by the check for single values that stand out on Wed 10 June (90 mph, more than 45 mph from the values before and after it).",
            ],
            SensorPart.SetAside(Values(day), UnitSystem.Us).Select(s => s.ToString()));
    }

    [Fact]
    public void More_than_six_kinds_are_cut_and_counted()
    {
        var many = Of(Day, [.. Enumerable.Range(0, 9).Select(i => Aside($"s{i}", "rain -1 mm", "outside", "limits", 1))]);
        var said = SensorPart.SetAside(Values(many), UnitSystem.Metric);
        Assert.Equal(6, said.Count);
        Assert.StartsWith("4 more kinds", said[^1].ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Doubts_are_those_of_the_newest_day()
    {
        var old = Of(Day.AddDays(-1)) with { Doubts = [new("clock", "yard", "its sun is late")] };
        Assert.Empty(SensorPart.Doubts([old, Of(Day)], UnitSystem.Metric));
        Assert.Equal(["Station yard: its sun is late (check for a wrong clock)."], SensorPart.Doubts([Of(Day.AddDays(-2)), old], UnitSystem.Metric).Select(d => d.ToString()));
    }

    [Theory]
    [InlineData(20921, 30.48, UnitSystem.Us, " (13 mi away, 100 ft higher)")]
    [InlineData(8100, -30.4, UnitSystem.Metric, " (8.1 km away, 30 m lower)")]
    [InlineData(20000, 0.2, UnitSystem.Metric, " (20 km away, as high as the site)")]
    public void Where_a_station_stands_is_said_in_the_sites_units(double distance, double higher, UnitSystem units, string said)
    {
        Assert.Equal(said, SensorPart.Place(new StandIn("hill", distance, higher), units).ToString());
        Assert.Equal("", SensorPart.Place(new StandIn("hill", null, null), units).ToString());
        Assert.Equal("", SensorPart.Place(null, units).ToString());
    }

    private static SetAsideValue Aside(string station, string what, string why, string check, int values) =>
        new(station, new DateTimeOffset(2026, 6, 9, 12, 0, 0, TimeSpan.Zero), what, why) { Check = check, Values = values };

    private static List<(DateOnly Date, SetAsideValue Value)> Values(params WeatherDay[] days) => [.. days.SelectMany(d => d.SetAside.Select(v => (d.Date, v)))];

    private static WeatherDay Of(DateOnly date, params SetAsideValue[] setAside) =>
        new() { Date = date, Station = "yard", EtoMm = 5, Basis = EtoBasis.Hourly, Rain = [], SetAside = setAside };
}
