using System.Globalization;
using DailyAdjust.Core.Sites;
using Xunit;

namespace DailyAdjust.Tests.Files.Readings;

public sealed class ExampleSiteTests
{
    private static readonly WeatherSource Yard = StationFile.Plain with
    {
        Missing = ["", "--"],
        Columns = new Dictionary<WeatherQuantity, MappedColumn>
        {
            [WeatherQuantity.AirTemperature] = new("Temp (°F)", null),
            [WeatherQuantity.RelativeHumidity] = new("RH (%)", null),
            [WeatherQuantity.WindSpeed] = new("Wind (mph)", null),
            [WeatherQuantity.SolarRadiation] = new("Solar (W/m²)", null),
            [WeatherQuantity.Rain] = new("Rain (in)", null),
        },
    };

    [Fact]
    public void SeventeenDaysOfHoursAreReadWithoutAProblem()
    {
        var result = StationFile.Read(File.ReadAllBytes(StationFile.Path("example-site/yard-hourly.csv")), Yard);

        Assert.Empty(result.Report.Problems);
        Assert.Equal((408, 0, 0), result.Counts);
        Assert.Equal(17, result.Days.Count);
        Assert.All(result.Days, day => Assert.Equal(24, day.Readings.Count));
        Assert.Equal(StationFile.Chicago.DayStart(new DateOnly(2026, 6, 1)), result.Report.Begin);
        Assert.Equal(StationFile.Chicago.DayEnd(new DateOnly(2026, 6, 17)), result.Report.End);
    }

    /// <summary>Rain and the extremes of the hourly temperatures, day by day, as the example's own table has them.</summary>
    [Fact]
    public void DailyRainAndTemperaturesAreThoseOfTheExample()
    {
        var result = StationFile.Read(File.ReadAllBytes(StationFile.Path("example-site/yard-hourly.csv")), Yard);

        foreach (var row in File.ReadLines(StationFile.Path("example-site/expected-weather.csv")).Skip(1).Select(line => line.Split(',')))
        {
            var day = result.Days.Single(d => d.Date == DateOnly.Parse(row[0], CultureInfo.InvariantCulture));
            Assert.Equal(double.Parse(row[3], CultureInfo.InvariantCulture), day.Readings.Sum(r => r.RainMm), 0.00005001);
            Assert.Equal(double.Parse(row[4], CultureInfo.InvariantCulture), day.Readings.Max(r => r.AirTemperatureC), 0.00005001);
            Assert.Equal(double.Parse(row[5], CultureInfo.InvariantCulture), day.Readings.Min(r => r.AirTemperatureC), 0.00005001);
        }
    }
}
