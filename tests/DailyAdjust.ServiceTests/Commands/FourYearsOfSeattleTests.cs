using System.Globalization;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>
/// Four years of a public daily file through the real program: read with a column map, every day reckoned, none left out.
/// Source: seattle-weather.csv of npm vega-datasets 3.2.1 (NOAA daily data 2012-2015), see tests/DailyAdjust.Tests/Outside/vega-datasets.
/// </summary>
public sealed class FourYearsOfSeattleTests : IDisposable
{
    private const int Days = 1461;

    private const string SiteYaml = """
        site: { name: Four years, latitude: 47.45, longitude: -122.31, elevation: 130 m, time_zone: America/Los_Angeles, units: metric, start: 2012-01-01, start_soil: full }
        weather:
          stations:
            - id: airport
              wind_height: 10 m
              files: "seattle-*.csv"
              format: csv
              time: { column: date, pattern: "yyyy-MM-dd", clock: local, stamp: start }
              interval: 1 d
              columns:
                air_temperature_max: { column: temp_max, unit: "°C" }
                air_temperature_min: { column: temp_min, unit: "°C" }
                wind_speed: { column: wind, unit: m/s }
                rain: { column: precipitation, unit: mm }
          gauges: [{ id: airport, station: airport }]
        soils:
          loam: { available_water: 150 mm/m, curve_number: 61 }
        areas:
          fairways: { grass: cool_season, kc: uc-cool-season, root_depth: 200 mm, soil: loam, allowable_depletion: 50 %, efficiency: 75 % }
        controllers:
          - id: C1
            percent: { applies: program, min: 0 %, max: 200 %, step: 5 % }
            programs:
              - { id: P1, starts: ["03:00"], days: every day }
        """;

    private const string Stations = """
        controller,station,name,area,minutes P1,precipitation rate (mm/h),area watered (m²)
        C1,1,fairway 1,fairways,20,12,2000
        """;

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Fact]
    public void Every_day_is_read_and_reckoned()
    {
        var site = _home.EmptySite("seattle");
        File.WriteAllText(site.SiteFile, SiteYaml + "\n");
        File.WriteAllText(site.StationsFile, Stations + "\n");
        var file = Path.Combine(Repository.Root, "tests", "DailyAdjust.Tests", "Outside", "vega-datasets", "seattle-weather.csv");
        var ingest = Run("ingest", file);
        Assert.True(ingest.ExitCode == 0, ingest.ToString());
        Assert.Contains("1461 rows read, 0 set aside, 0 refused", ingest.Output, StringComparison.Ordinal);

        var source = CsvRows.Of(File.ReadAllText(file));
        var weather = CsvRows.Of(Run("weather", "--format", "csv").Output);
        Assert.Equal(Days, weather.Rows.Count);
        for (var i = 0; i < Days; i++)
        {
            Assert.Equal(source.Text(source.Rows[i], "date"), weather.Text(weather.Rows[i], "date"));
            Assert.Equal(source.Number(source.Rows[i], "precipitation")!.Value, weather.Number(weather.Rows[i], "rain_mm")!.Value, 0.0001);
            Assert.Equal("part-estimated", weather.Text(weather.Rows[i], "eto_basis"));
        }

        // Summer draws what winter does not: July of every year beyond 3 mm a day, December of every year below 1.5 (common practice for this coast).
        Assert.All(ByMonth(weather, 7), eto => Assert.InRange(eto, 3, 7));
        Assert.All(ByMonth(weather, 12), eto => Assert.InRange(eto, 0.1, 1.5));

        var balance = CsvRows.Of(Run("balance", "--format", "csv").Output);
        Assert.Equal(Days, balance.Rows.Count);
        var depletion = 0.0;
        foreach (var row in balance.Rows)
        {
            double Of(string column) => balance.Number(row, column)!.Value;
            var closes = depletion + Of("etc_mm") - (Of("rain_mm") - Of("intercepted_mm") - Of("runoff_mm")) - Of("irrigation_mm") - Of("hose_mm") + Of("drainage_mm") + Of("probe_mm");
            Assert.Equal(Of("depletion_mm"), closes, 0.001); // eight numbers of four decimals
            depletion = Of("depletion_mm");
        }

        // A morning in each season of each year: advice from that day's knowledge.
        for (var date = new DateOnly(2012, 1, 15); date.Year < 2016; date = date.AddMonths(6))
        {
            var advice = CsvRows.Of(Run("advice", "--date", date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), "--format", "csv").Output);
            Assert.NotEqual("as-set", advice.Text(Assert.Single(advice.Rows), "advice"));
        }
    }

    private static IEnumerable<double> ByMonth(CsvRows weather, int month) => weather.Rows
        .Select(row => (Date: DateOnly.ParseExact(weather.Text(row, "date"), "yyyy-MM-dd", CultureInfo.InvariantCulture), Eto: weather.Number(row, "eto_mm")!.Value))
        .Where(d => d.Date.Month == month)
        .GroupBy(d => d.Date.Year)
        .Select(year => year.Average(d => d.Eto));

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([.. arguments, "--home", _home.Path]);
}
