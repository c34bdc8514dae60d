using System.Globalization;
using System.Text;
using CsCheck;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;
using DailyAdjust.Files.Formats;
using DailyAdjust.Files.Readings;
using DailyAdjust.Tests.Files.Readings;
using Xunit;

namespace DailyAdjust.Tests.Files.Formats;

/// <summary>The public gridpoint forecast: an invented place, in the shape that the publisher describes.</summary>
public sealed class GridpointTests
{
    private static readonly WeatherSource Source = StationFile.Plain with { Id = "forecast", Files = "*.json", Format = "gridpoint", Columns = new Dictionary<WeatherQuantity, MappedColumn>() };

    private const string Good = """
        {
            "type": "Feature",
            "geometry": { "type": "Polygon", "coordinates": [[[-90.1, 41.9], [-90.0, 41.9]]] },
            "properties": {
                "updateTime": "2026-06-08T09:12:00+00:00",
                "validTimes": "2026-06-08T06:00:00+00:00/P7DT19H",
                "forecastOffice": "https://example.org/offices/XYZ",
                "gridId": "XYZ",
                "elevation": { "unitCode": "wmoUnit:m", "value": 170.1 },
                "temperature": { "uom": "wmoUnit:degC", "values": [
                    { "validTime": "2026-06-08T09:00:00+00:00/PT1H", "value": 14.5 },
                    { "validTime": "2026-06-08T10:00:00+00:00/PT2H", "value": 16 },
                    { "validTime": "2026-06-08T12:00:00+00:00/PT1H", "value": null } ] },
                "minTemperature": { "values": [ { "validTime": "2026-06-09T02:00:00+00:00/PT12H", "value": 9 } ], "uom": "wmoUnit:degC" },
                "windSpeed": { "uom": "wmoUnit:km_h-1", "values": [ { "validTime": "2026-06-08T09:00:00+00:00/PT3H", "value": 18 } ] },
                "probabilityOfPrecipitation": { "uom": "wmoUnit:percent", "values": [ { "validTime": "2026-06-08T06:00:00+00:00/P1DT6H", "value": 70 } ] },
                "quantitativePrecipitation": { "uom": "wmoUnit:mm", "values": [ { "validTime": "2026-06-08T06:00:00+00:00/PT6H", "value": 3 } ] },
                "weather": { "values": [ { "validTime": "2026-06-08T09:00:00+00:00/PT3H", "value": [ { "coverage": "chance", "attributes": [] } ] } ] }
            }
        }
        """;

    [Fact]
    public void A_mean_holds_for_all_hours_of_its_interval_and_an_amount_is_spread_over_them()
    {
        var result = Read(Good);

        Assert.Empty(result.Report.Problems);
        Assert.Equal((7, 0, 0), result.Counts);
        Assert.Equal(new DateTimeOffset(2026, 6, 8, 9, 12, 0, TimeSpan.Zero), result.Report.Issued);
        var hours = result.Readings.ToDictionary(r => r.Begin.UtcDateTime.ToString("dd HH", CultureInfo.InvariantCulture));
        Assert.All(result.Readings, r => Assert.Equal(TimeSpan.FromHours(1), r.End - r.Begin));
        Assert.Equal([14.5, 16, 16, double.NaN], new[] { "08 09", "08 10", "08 11", "08 12" }.Select(hour => hours[hour].AirTemperatureC));
        Assert.Equal(5, hours["08 11"].WindSpeedMPerS, 1e-9); // 18 km/h
        Assert.Equal(3.0, result.Readings.Where(r => !double.IsNaN(r.RainMm)).Sum(r => r.RainMm), 1e-9);
        Assert.Equal(0.5, hours["08 11"].RainMm, 1e-9);
        Assert.True(double.IsNaN(hours["08 12"].RainMm)); // missing is never zero
        Assert.Equal(30, result.Readings.Count(r => r.RainChancePercent.Equals(70.0)));
    }

    [Fact]
    public void The_lowest_of_an_interval_across_midnight_belongs_to_the_day_in_which_it_ends()
    {
        // 9 p.m. to 9 a.m. in Chicago: the evening of the 8th was not that cold.
        var lowest = Read(Good).Readings.Where(r => !double.IsNaN(r.AirTemperatureMinC)).ToList();
        Assert.Equal(9, lowest.Count);
        Assert.All(lowest, r => Assert.Equal(new DateOnly(2026, 6, 9), StationFile.Chicago.DateOf(r.Begin)));
    }

    [Fact]
    public void Layers_at_the_top_are_read_too_and_one_line_is_as_good_as_many()
    {
        var flat = Good.ReplaceLineEndings(" ").Replace("\"properties\": {", "\"a\": { \"b\": 1 },", StringComparison.Ordinal).TrimEnd()[..^1];
        var result = Read(flat + string.Concat(Enumerable.Repeat(" ", 70_000)));
        Assert.Equal(Read(Good).Readings, result.Readings);
        Assert.Equal((7, 0, 0), result.Counts);
    }

    [Fact]
    public void A_layer_in_an_unknown_unit_is_set_aside_and_the_others_count()
    {
        var result = Read(Good.Replace("wmoUnit:km_h-1", "wmoUnit:furlong", StringComparison.Ordinal));
        Assert.Equal((6, 1, 0), result.Counts);
        Assert.All(result.Readings, r => Assert.True(double.IsNaN(r.WindSpeedMPerS)));
        var problem = Assert.Single(result.Report.Problems);
        Assert.Equal((15, 22), (problem.Line, problem.Column));
        Assert.Contains("windSpeed", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("wmoUnit:degF", 58.1, 14.5)]
    [InlineData("unit:degC", 14.5, 14.5)]
    [InlineData("wmoUnit:K", 287.65, 14.5)]
    public void Units_are_those_published(string unit, double value, double celsius)
    {
        var text = Good.Replace("\"temperature\": { \"uom\": \"wmoUnit:degC\"", $"\"temperature\": {{ \"uom\": \"{unit}\"", StringComparison.Ordinal)
            .Replace("14.5", value.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Equal(celsius, Read(text).Readings.First(r => !double.IsNaN(r.AirTemperatureC)).AirTemperatureC, 1e-9);
    }

    [Theory]
    [InlineData("\"value\": 18", "\"value\": \"18\"", 6, 1, 0)] // a text is no number, even if it looks like one
    [InlineData("\"value\": 18", "\"value\": 1e999", 6, 1, 0)]
    [InlineData("\"value\": 18", "\"value\": { \"a\": [1] }", 6, 1, 0)]
    [InlineData("\"value\": 18", "\"valu\": 18", 7, 0, 0)] // no value: missing
    [InlineData("09:00:00+00:00/PT3H\", \"value\": 18", "09:00:00+00:00\", \"value\": 18", 6, 0, 1)] // an instant is no interval
    [InlineData("09:00:00+00:00/PT3H\", \"value\": 18", "09:30:00+00:00/PT3H\", \"value\": 18", 6, 0, 1)] // half hours
    [InlineData("09:00:00+00:00/PT3H\", \"value\": 18", "09:00:00+00:00/PT90M\", \"value\": 18", 6, 0, 1)]
    [InlineData("09:00:00+00:00/PT3H\", \"value\": 18", "09:00:00+00:00/PT0H\", \"value\": 18", 6, 0, 1)]
    [InlineData("09:00:00+00:00/PT3H\", \"value\": 18", "09:00:00+00:00/P999D\", \"value\": 18", 6, 0, 1)]
    [InlineData("2026-06-08T09:00:00+00:00/PT3H\", \"value\": 18", "2006-06-08T09:00:00+00:00/PT3H\", \"value\": 18", 6, 0, 1)]
    [InlineData("{ \"validTime\": \"2026-06-08T09:00:00+00:00/PT3H\", \"value\": 18 }", "[18]", 6, 0, 1)]
    public void A_bad_value_spoils_itself_and_nothing_else(string good, string bad, int read, int aside, int refused)
    {
        var result = Read(Good.Replace(good, bad, StringComparison.Ordinal));
        Assert.Equal((read, aside, refused), result.Counts);
        Assert.All(result.Readings, r => Assert.True(double.IsNaN(r.WindSpeedMPerS)));
        Assert.Equal(read == 7 ? 0 : 1, result.Report.Problems.Count);
        Assert.All(result.Report.Problems, p => Assert.Equal(15, p.Line));
        Assert.Equal(Read(Good).Readings.Select(r => r.AirTemperatureC), result.Readings.Select(r => r.AirTemperatureC));
    }

    [Fact]
    public void Malformed_JSON_is_refused_with_its_place()
    {
        var cut = Read(Good[..Good.IndexOf("P1DT6H", StringComparison.Ordinal)]);
        Assert.True(cut.Report.FileRefused);
        Assert.Empty(cut.Readings);
        Assert.Equal(16, cut.Report.Problems[0].Line);

        var comma = Read(Good.Replace("\"gridId\": \"XYZ\",", "\"gridId\": \"XYZ\"", StringComparison.Ordinal));
        Assert.Equal((9, 9), (comma.Report.Problems[0].Line, comma.Report.Problems[0].Column));
        Assert.True(Read("<html><body>Not found</body></html>").Report.FileRefused);
        Assert.True(Read(string.Concat(Enumerable.Repeat("[", 10_000))).Report.FileRefused);
        Assert.True(Read("{}{}").Report.FileRefused);
        Assert.True(Read("{ \"title\": \"Data Unavailable For Requested Point\", \"status\": 404 }").Report.FileRefused);
        Assert.True(Read("{ \"temperature\": { \"values\": [" + string.Concat(Enumerable.Repeat("{},", 3_000_000)) + "{} ] } }").Report.FileRefused);
    }

    [Fact]
    public void Without_a_time_of_issue_there_is_none_and_a_bad_one_is_told()
    {
        Assert.Null(Read(Good.Replace("updateTime", "changed", StringComparison.Ordinal)).Report.Issued);
        var bad = Read(Good.Replace("2026-06-08T09:12:00+00:00", "yesterday", StringComparison.Ordinal));
        Assert.Null(bad.Report.Issued);
        Assert.Contains("updateTime", Assert.Single(bad.Report.Problems).What, StringComparison.Ordinal);
    }

    [Fact]
    public void Spoilt_bytes_never_throw_and_every_value_is_counted_once() =>
        Gen.Select(Gen.Double[0, 1], Gen.Byte, Gen.Int[0, 4]).Array[1, 8].Sample(
            changes =>
            {
                var bytes = new List<byte>(Encoding.UTF8.GetBytes(Good));
                foreach (var (at, value, how) in changes)
                {
                    Spoiling.Byte(bytes, at, value, how);
                }

                var (once, twice) = (Read([.. bytes]), Read([.. bytes]));
                Assert.Equal(once.Readings, twice.Readings);
                var counted = once.Counts.Read + once.Counts.SetAside + once.Counts.Refused;
                Assert.True(once.Report.FileRefused ? counted == 0 : counted <= 7);
            },
            iter: 4000);

    private static Result Read(string text) => Read(Encoding.UTF8.GetBytes(text));

    private static Result Read(byte[] bytes)
    {
        using var stream = new MemoryStream(bytes);
        var days = new List<ReadingDay>();
        var report = WeatherFileReader.Read("grid.json", stream, Source, StationFile.Chicago, days.Add);
        return new Result(report.FileRefused ? [] : ReadingMerge.Merge(days.Select(day => day.Readings)), days, report);
    }
}
