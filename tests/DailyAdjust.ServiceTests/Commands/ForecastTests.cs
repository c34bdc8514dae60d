using System.Globalization;
using System.Text;
using System.Text.Json;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Forecasts through the real program: a file in the inbox, and what the morning makes of it.</summary>
public sealed class ForecastTests : IDisposable
{
    private const string Gridpoint = """
          forecast: { files: "grid-*.json", format: gridpoint }

        """;

    private const string Csv = """
          forecast:
            files: "ahead-*.csv"
            format: csv
            interval: 1 d
            time: { column: Day, pattern: "yyyy-MM-dd", clock: local, stamp: start }
            columns: { air_temperature_max: "High (°F)", air_temperature_min: "Low (°F)", rain: "Rain (in)", rain_chance: "Chance (%)" }

        """;

    private static readonly DateOnly Date = new(2026, 6, 10);

    private readonly TestHome _home = new();

    public void Dispose() => _home.Dispose();

    [Theory]
    [InlineData(-3, 4)] // with the last days in it
    [InlineData(1, 4)] // from tomorrow on
    public void A_table_that_cannot_have_been_made_at_its_begin_counts_from_its_arrival(int firstDay, int lastDay)
    {
        var folder = SiteWith(Csv);
        var now = DateOnly.FromDateTime(DateTime.UtcNow);
        File.WriteAllLines(
            Path.Combine(folder.Inbox, "ahead-now.csv"),
            ["Day,High (°F),Low (°F),Rain (in),Chance (%)", .. Enumerable.Range(firstDay, lastDay - firstDay).Select(i => $"{now.AddDays(i):yyyy-MM-dd},90,60,0,10")]);
        var result = Run("ingest", Path.Combine(folder.Inbox, "ahead-now.csv"));
        Assert.True(result.ExitCode == 0, result.ToString());
        var after = DateTimeOffset.UtcNow.AddSeconds(1);
        using var site = OpenSite.Open(folder, LedgerMode.Read);
        var today = now.AddDays(1);
        var known = ForecastBook.Known(site, site.Newest, today, after, long.MaxValue);
        Assert.NotNull(known);
        Assert.InRange((after - known.Issued).TotalMinutes, 0, 10);
        Assert.Null(ForecastBook.Known(site, site.Newest, today, after.AddHours(-1), long.MaxValue));
    }

    [Fact]
    public void A_gridpoint_file_in_the_inbox_is_on_the_sheet_and_in_the_expected_ETo()
    {
        var plain = Morning(SiteWith(Gridpoint));
        Assert.False(plain.TryGetProperty("forecast", out _));
        Assert.DoesNotContain("orecast", Report(), StringComparison.Ordinal);

        Drop("grid-0610.json", Grid("2026-06-10T09:12:00+00:00", highC: 38));
        var result = Run("morning", "--date", "2026-06-10");
        Assert.True(result.ExitCode == 0, result.ToString());
        var hot = Advice();
        var forecast = hot.GetProperty("forecast");
        Assert.Equal("2026-06-10T04:12", forecast.GetProperty("issued").GetString());
        var today = forecast.GetProperty("days")[0];
        Assert.Equal((38d, 15d), (today.GetProperty("temperatureMaxC").GetDouble(), today.GetProperty("temperatureMinC").GetDouble()));
        Assert.Equal((8d, 60d), (today.GetProperty("rainMm").GetDouble(), today.GetProperty("rainChancePercent").GetDouble()));
        Assert.Contains("Forecast made at 04:12 today.", Report(), StringComparison.Ordinal);
        Assert.Contains("Today: rain 0.31 in, chance 60 %; 59 °F, 100 °F.", Report(), StringComparison.Ordinal);

        // Nothing else changed between the two issues, and its rain is in no balance.
        Assert.True(Expected(hot) > Expected(plain) + 0.5, $"{Expected(hot)} against {Expected(plain)}");
        Assert.Equal(Depletions(plain), Depletions(hot));
    }

    [Fact]
    public void What_was_forecast_later_is_not_known_even_if_it_is_there()
    {
        Drop("grid-0610.json", Grid("2026-06-10T10:01:00+00:00", highC: 38)); // 05:01; the sheet is as of 05:00
        Assert.False(Morning(SiteWith(Gridpoint)).TryGetProperty("forecast", out _));
        Assert.Equal("2026-06-10T05:01", Morning(null, "2026-06-11").GetProperty("forecast").GetProperty("issued").GetString());
    }

    [Fact]
    public void One_that_is_too_old_is_not_used_and_the_sheet_says_so()
    {
        var without = Morning(SiteWith(Gridpoint));
        Drop("grid-0608.json", Grid("2026-06-08T09:59:00+00:00", highC: 38)); // two days and a minute
        var old = Morning(null);
        Assert.True(old.GetProperty("forecast").GetProperty("tooOld").GetBoolean());
        Assert.Equal(Expected(without), Expected(old));
        Assert.Contains("The newest forecast was made at 04:59 Mon 8 June: too old", Report(), StringComparison.Ordinal);
    }

    [Fact]
    public void Read_again_from_the_stored_bytes_it_is_known_from_the_same_instant()
    {
        Drop("grid-0610.json", Grid("2026-06-10T09:12:00+00:00", highC: 38));
        var site = SiteWith(Gridpoint);
        var before = Morning(site);
        using (var ledger = SiteLedger.Open(site.LedgerFile, LedgerMode.Write))
        {
            ledger.DropDerived();
        }

        var again = Morning(null);
        Assert.Equal(before.GetProperty("forecast").GetRawText(), again.GetProperty("forecast").GetRawText());
        Assert.Equal(Expected(before), Expected(again));
    }

    [Fact]
    public void A_daily_CSV_does_as_well_and_rain_in_sight_lets_ground_wait_that_can()
    {
        const string Friday = "2026-06-05";
        var site = SiteWith(Csv + "  forecast_rain: { skip: { chance: 70 %, amount: 0.3 in } }\n");
        File.WriteAllText(site.SiteFile, string.Join('\n', File.ReadAllLines(site.SiteFile).Where(line => !line.Contains("run_at:", StringComparison.Ordinal))));
        var plain = Morning(site, Friday);
        Drop("ahead-0605.csv", "Day,High (°F),Low (°F),Rain (in),Chance (%)\n2026-06-05,80,60,0.60,80\n2026-06-06,78,58,0.00,10\n");
        var wet = Morning(null, Friday);
        var today = wet.GetProperty("forecast").GetProperty("days")[0];
        Assert.Equal((26.666667, 15.555556), (today.GetProperty("temperatureMaxC").GetDouble(), today.GetProperty("temperatureMinC").GetDouble()));
        Assert.NotEqual(Expected(plain), Expected(wet));
        Assert.Equal(Depletions(plain), Depletions(wet));

        // Two programs have ground that cannot wait: they run. The third could, and would have run.
        Assert.Equal(["set", "set", "skip"], Said(wet).Take(3));
        Assert.DoesNotContain("skip", Said(plain));
        Assert.StartsWith(
            "Rests on a forecast: 0.48 in of rain on Fri 5 June, chance 80 %, and the ground can wait without this water. If it does not rain, turn it on again",
            wet.GetProperty("programs")[2].GetProperty("reason").GetString(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_is_cut_is_refused_with_its_place()
    {
        SiteWith(Gridpoint);
        Drop("grid-0610.json", Grid("2026-06-10T09:12:00+00:00", highC: 38)[..400]);
        var result = Run("morning", "--date", "2026-06-10");
        Assert.Contains("grid-0610.json:", File.ReadAllText(Path.Combine(_home.Home.Site(ExampleSite.Name).Inbox, "refused", "grid-0610.json.why.txt")), StringComparison.Ordinal);
        Assert.False(Advice().TryGetProperty("forecast", out _), result.ToString());
    }

    /// <summary>The example site with a forecast, and its weather and logbook up to five in the morning of the 10th.</summary>
    private SiteFolder SiteWith(string forecast)
    {
        var site = ExampleSite.PutInto(_home);
        File.WriteAllText(site.SiteFile, File.ReadAllText(site.SiteFile).Replace("  gauges:\n", forecast + "  gauges:\n", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(site.Inbox, "yard-1.csv"), ExampleSite.WeatherUntil("2026-06-11 05:00"));
        File.Copy(ExampleSite.Logbook, Path.Combine(site.Inbox, "logbook.csv"));
        return site;
    }

    private void Drop(string name, string text)
    {
        var inbox = _home.Home.Site(ExampleSite.Name).Inbox;
        Directory.CreateDirectory(inbox);
        File.WriteAllText(Path.Combine(inbox, name), text);
    }

    private JsonElement Morning(SiteFolder? site, string date = "2026-06-10")
    {
        var result = Run("morning", "--date", date);
        Assert.True(result.ExitCode == 0, result.ToString());
        return Advice(site, date);
    }

    private JsonElement Advice(SiteFolder? site = null, string date = "2026-06-10")
    {
        var folder = (site ?? _home.Home.Site(ExampleSite.Name)).ReportFolder(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture));
        using var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "advice.json")));
        return json.RootElement.Clone();
    }

    /// <summary>The text of the sheet, without the line breaks of a narrow terminal.</summary>
    private string Report() => string.Join(' ', File.ReadAllText(Path.Combine(_home.Home.Site(ExampleSite.Name).ReportFolder(Date), "report-full.txt")).Split((char[])['\n', ' '], StringSplitOptions.RemoveEmptyEntries));

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([arguments[0], "--home", _home.Path, .. arguments[1..]]);

    private static double Expected(JsonElement advice) => advice.GetProperty("freshness").GetProperty("expectedEtoMm").GetDouble();

    private static IReadOnlyList<string> Said(JsonElement advice) => [.. advice.GetProperty("programs").EnumerateArray().Select(p => p.GetProperty("advice").GetString()!)];

    private static IReadOnlyList<double> Depletions(JsonElement advice) =>
        [.. advice.GetProperty("programs").EnumerateArray().SelectMany(p => p.GetProperty("zones").EnumerateArray()).Select(z => z.GetProperty("depletionMm").GetDouble())];

    /// <summary>Five days by the hour from 4 in the morning of the date of issue on: 15 °C but for one hot hour a day, and 8 mm in six hours each afternoon.</summary>
    private static string Grid(string updateTime, double highC)
    {
        var begin = DateTimeOffset.Parse(updateTime, CultureInfo.InvariantCulture).ToUniversalTime().Date.AddHours(9);
        var temperature = new StringBuilder();
        var rain = new StringBuilder();
        var chance = new StringBuilder();
        for (var day = 0; day < 5; day++)
        {
            var at = begin.AddDays(day);
            var comma = day == 0 ? "" : ",";
            temperature.Append(CultureInfo.InvariantCulture, $$"""{{comma}}{ "validTime": "{{at:s}}+00:00/PT11H", "value": 15 },{ "validTime": "{{at.AddHours(11):s}}+00:00/PT1H", "value": {{highC}} },{ "validTime": "{{at.AddHours(12):s}}+00:00/PT12H", "value": 15 }""");
            rain.Append(CultureInfo.InvariantCulture, $$"""{{comma}}{ "validTime": "{{at.AddHours(9):s}}+00:00/PT6H", "value": 8 }""");
            chance.Append(CultureInfo.InvariantCulture, $$"""{{comma}}{ "validTime": "{{at:s}}+00:00/P1D", "value": 60 }""");
        }

        return $$"""
            { "properties": { "updateTime": "{{updateTime}}",
              "temperature": { "uom": "wmoUnit:degC", "values": [{{temperature}}] },
              "probabilityOfPrecipitation": { "uom": "wmoUnit:percent", "values": [{{chance}}] },
              "quantitativePrecipitation": { "uom": "wmoUnit:mm", "values": [{{rain}}] } } }
            """;
    }
}
