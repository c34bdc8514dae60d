using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>What a look during the day knows of its reference ET.</summary>
public sealed class EtoSoFarTests
{
    private static readonly DateOnly Day = new(2026, 6, 10);
    private static readonly WeatherScene Scene = new();
    private static readonly IReadOnlyList<Reading> Steady = Scene.Steady(Day.AddDays(-2), Day);

    [Fact]
    public void At_the_days_end_it_is_the_days()
    {
        var soFar = At(Scene, 24, ("yard", Steady))!;
        Assert.Equal(Scene.Days(Day, Day, ("yard", Steady))[0].EtoMm!.Value, soFar.Mm, 1e-6);
        Assert.Equal((Scene.Clock.DayEnd(Day), "yard", false), (soFar.Through, soFar.Station, soFar.IsSupplied));
    }

    [Fact]
    public void At_noon_it_is_what_came_by_then() => Assert.Equal(Hour(12), At(Scene, 12.5, ("yard", Steady))!.Through);

    [Fact]
    public void Of_a_station_that_reports_once_a_day_or_of_no_first_hour_there_is_none()
    {
        Assert.Null(At(Scene with { Stations = [WeatherScene.Source("yard", 0)] }, 12, ("yard", Steady)));
        Assert.Null(At(Scene, 0.5, ("yard", Steady)));
    }

    [Fact]
    public void Where_the_site_says_so_it_is_the_stations_own()
    {
        var own = Scene with { Stations = [Scene.Stations[0] with { UseSuppliedEto = true }] };
        var soFar = At(own, 8, ("yard", [.. Steady.Select(r => r with { ReferenceEtMm = 0.25 })]))!;
        Assert.Equal((8 * 0.25, true, Hour(8)), (soFar.Mm, soFar.IsSupplied, soFar.Through));

        // Dew is no water that was drawn.
        Assert.Equal(0, At(own, 8, ("yard", [.. Steady.Select(r => r with { ReferenceEtMm = -0.01 })]))!.Mm);
    }

    [Theory]
    [InlineData(9, "yard")] // three hours late: a short gap
    [InlineData(8, "hill")]
    public void Nobody_stands_in_for_a_station_that_is_only_late(double known, string station)
    {
        var two = Scene with { Stations = [WeatherScene.Source("yard"), WeatherScene.Source("hill")] };
        Assert.Equal(station, At(two, 12, ("yard", [.. Steady.Where(r => r.End <= Hour(known))]), ("hill", Steady))!.Station);
    }

    private static DateTimeOffset Hour(double hour) => Scene.Clock.DayStart(Day).AddHours(hour);

    private static EtoSoFar? At(WeatherScene scene, double hour, params (string Station, IReadOnlyList<Reading> Readings)[] readings) =>
        WeatherDays.EtoSinceMidnight(scene.Site, Day, Hour(hour), readings.ToDictionary(r => r.Station, r => r.Readings, StringComparer.Ordinal));
}
