using System.Globalization;
using DailyAdjust.Core.Weather;
using Xunit;

namespace DailyAdjust.Tests.Weather;

/// <summary>A whole site's hourly weather against what an independent program makes of it.</summary>
public sealed class ExampleSiteWeatherTests
{
    [Fact]
    public void Every_day_is_as_the_independent_program_has_it()
    {
        var scene = new WeatherScene();
        var expected = CheckTable.Read("Data/example-site/expected-weather.csv");
        var days = scene.Days(new DateOnly(2026, 6, 1), new DateOnly(2026, 6, 17), ("yard", Readings(scene)));

        Assert.Equal(17, expected.Count);
        Assert.All(expected.Zip(days), pair =>
        {
            var (row, day) = pair;
            Assert.Equal(row["date"], day.Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            Assert.Equal(row["station"], day.Station);
            Assert.Equal(EtoBasis.Hourly, day.Basis);
            Assert.Equal(row.Number("eto_mm"), day.EtoMm!.Value, 0.000051);
            Assert.Equal(row.Number("rain_mm"), day.RainAt("yard").RainMm!.Value, 0.00005);
            Assert.Equal(row.Number("tmax_c"), day.AirTemperatureMaxC!.Value, 0.00005);
            Assert.Equal(row.Number("tmin_c"), day.AirTemperatureMinC!.Value, 0.00005);
            Assert.Empty(day.Estimated);
            Assert.Empty(day.SetAside);
        });
    }

    /// <summary>The file's units, converted here by hand: °F, %, mph, W/m², in; stamped at the end of the hour, local time.</summary>
    private static List<Reading> Readings(WeatherScene scene) =>
        [.. CheckTable.Read("Data/example-site/yard-hourly.csv").Select(row =>
        {
            var stamp = DateTime.ParseExact(row["Time"], "yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
            var end = scene.Clock.ToInstant(DateOnly.FromDateTime(stamp), TimeOnly.FromDateTime(stamp));
            return new Reading
            {
                Begin = end.AddHours(-1),
                End = end,
                AirTemperatureC = (row.Number("Temp (°F)") - 32) / 1.8,
                RelativeHumidityPercent = row.Number("RH (%)"),
                WindSpeedMPerS = row.Number("Wind (mph)") * 0.44704,
                SolarRadiationMJPerM2 = row.Number("Solar (W/m²)") * 3600 / 1e6,
                RainMm = row.Number("Rain (in)") * 25.4,
            };
        })];
}
