using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Readings;
using DailyAdjust.Files.Sites;
using DailyAdjust.Tests.Architecture;
using Xunit;

namespace DailyAdjust.Tests.Weather.Checks;

/// <summary>Good weather goes through every check untouched.</summary>
public sealed class HealthyYearTests
{
    [Theory]
    [InlineData(60, 44.21)]
    [InlineData(10, 44.21)]
    [InlineData(60, 62)]
    [InlineData(60, -38)]
    public void A_year_of_healthy_hours_trips_nothing(int minutes, double latitude)
    {
        var scene = new WeatherScene { LatitudeDeg = latitude, Stations = [WeatherScene.Source("yard", minutes) with { Accept = [] }] };
        var (from, through) = (new DateOnly(2026, 1, 3), new DateOnly(2026, 12, 29));
        var days = scene.Days(from, through, ("yard", HealthyWeather.Of(scene, from.AddDays(-2), through.AddDays(1), minutes)));
        Assert.Equal(361, days.Count);
        Assert.All(days, d => Assert.Empty(d.SetAside));
        Assert.All(days, d => Assert.Empty(d.Doubts));
        Assert.All(days, d => Assert.Equal(EtoBasis.Hourly, d.Basis));
    }

    [Theory]
    [InlineData(5.0 / 9)]
    [InlineData(1)]
    public void A_year_in_whole_degrees_percent_and_miles_an_hour_trips_nothing(double degree)
    {
        var scene = new WeatherScene { Stations = [WeatherScene.Source("yard") with { Accept = [] }] };
        var (from, through) = (new DateOnly(2026, 1, 3), new DateOnly(2026, 12, 29));
        double To(double value, double step) => Math.Round(value / step) * step;
        var readings = HealthyWeather.Of(scene, from.AddDays(-2), through.AddDays(1)).Select(r => r with
        {
            AirTemperatureC = To(r.AirTemperatureC, degree),
            RelativeHumidityPercent = To(r.RelativeHumidityPercent, 1),
            WindSpeedMPerS = To(r.WindSpeedMPerS, 0.44704),
            SolarRadiationMJPerM2 = To(r.SolarRadiationMJPerM2, 0.1),
        }).ToList();
        Assert.All(scene.Days(from, through, ("yard", readings)), d => Assert.True(d.SetAside.Count + d.Doubts.Count == 0, string.Join('\n', d.SetAside) + string.Join('\n', d.Doubts)));
    }

    /// <summary>Seattle 2012-2015, daily (Outside/vega-datasets).</summary>
    [Fact]
    public void Four_real_years_of_daily_weather_trip_nothing()
    {
        var scene = new WeatherScene { LatitudeDeg = 47.6, LongitudeDeg = -122.3, ElevationM = 50, Zone = "America/Los_Angeles", Stations = [WeatherScene.Source("yard", 0) with { Accept = [] }] };
        var readings = CheckTable.Read("Outside/vega-datasets/seattle-weather.csv").Select(row =>
        {
            var date = DateOnly.ParseExact(row["date"], "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
            return new Reading
            {
                Begin = scene.Clock.DayStart(date),
                End = scene.Clock.DayEnd(date),
                AirTemperatureMaxC = row.Number("temp_max"),
                AirTemperatureMinC = row.Number("temp_min"),
                WindSpeedMPerS = row.Number("wind"),
                RainMm = row.Number("precipitation"),
            };
        }).ToList();
        var days = scene.Days(new DateOnly(2012, 1, 1), new DateOnly(2015, 12, 31), ("yard", readings));
        Assert.Equal(1461, days.Count);
        Assert.All(days, d => Assert.True(d.SetAside.Count + d.Doubts.Count == 0, string.Join('\n', d.SetAside)));
    }

    [Fact]
    public void Of_the_demo_s_season_only_the_loose_plug_is_set_aside()
    {
        var folder = Path.Combine(Repository.Root, "sample-weather");
        var site = SiteReader.Read(
            "site.yaml", File.ReadAllText(Path.Combine(folder, "site", "site.yaml")), "stations.csv", File.ReadAllText(Path.Combine(folder, "site", "stations.csv"))).Site!;
        var readings = site.Weather.Stations.ToDictionary(s => s.Id, s => Of(folder, site, s), StringComparer.Ordinal);
        var days = WeatherDays.Compute(new WeatherDayInputs
        {
            Versions = [new SiteVersion(site.Start, site)],
            From = site.Start,
            Through = new DateOnly(2026, 7, 15),
            Readings = readings,
            Log = [],
            AsOf = DateTimeOffset.MaxValue,
        });
        Assert.Equal(92, days.Count);
        Assert.Equal(["limits air_temperature -73.278 °C"], days.SelectMany(d => d.SetAside).Select(s => s.Check + " " + s.What));
        Assert.Empty(days.SelectMany(d => d.Doubts));
    }

    private static IReadOnlyList<Reading> Of(string folder, Site site, WeatherSource source) =>
        ReadingMerge.Merge([.. Directory.GetFiles(Path.Combine(folder, "inbox"), source.Files).Order(StringComparer.Ordinal).Select(file => Read(file, site, source))]);

    private static List<Reading> Read(string file, Site site, WeatherSource source)
    {
        List<Reading> readings = [];
        using var stream = File.OpenRead(file);
        StationCsvReader.Read(Path.GetFileName(file), stream, source, site.Clock, day => readings.AddRange(day.Readings));
        return readings;
    }
}
