using System.Globalization;
using System.Text.Json;
using DailyAdjust.Service.Home;
using Xunit;

namespace DailyAdjust.ServiceTests.Commands;

/// <summary>Weather that comes late, corrected or from elsewhere, through the real program.</summary>
public sealed class WeatherAsItArrivesTests : IDisposable
{
    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    public WeatherAsItArrivesTests() => _site = ExampleSite.PutInto(_home);

    public void Dispose() => _home.Dispose();

    [Fact]
    public void A_correction_is_told_on_the_next_sheet_and_leaves_the_issued_one_as_it_was()
    {
        Drop("yard-1.csv", ExampleSite.WeatherUntil("2026-06-09 05:00"));
        Assert.Equal(0, Run("morning", "--date", "2026-06-09").ExitCode);
        var issued = File.ReadAllBytes(Report("2026-06-09", "advice.json"));

        // The station's own correction: a third of an inch in the night of the 8th, which the first file did not have.
        var lines = ExampleSite.WeatherUntil("2026-06-10 05:00").Split('\n');
        var at = Array.FindIndex(lines, line => line.StartsWith("2026-06-08 23:00", StringComparison.Ordinal));
        var before = double.Parse(lines[at].Split(',')[5], CultureInfo.InvariantCulture);
        lines[at] = lines[at][..(lines[at].LastIndexOf(',') + 1)] + (before + 0.35).ToString("0.00", CultureInfo.InvariantCulture);
        Drop("yard-2.csv", string.Join('\n', lines));
        Assert.Equal(0, Run("morning", "--date", "2026-06-10").ExitCode);

        var text = Text("2026-06-10");
        Assert.Contains("Corrected since the last sheet: Rain at yard of Mon 8 June: was", text, StringComparison.Ordinal);
        Assert.Contains("Corrected since the last sheet", File.ReadAllText(Report("2026-06-10", "report.html")), StringComparison.Ordinal);
        using var json = JsonDocument.Parse(File.ReadAllBytes(Report("2026-06-10", "advice.json")));
        var corrections = json.RootElement.GetProperty("corrections");
        var rain = corrections.GetProperty("weather").EnumerateArray().Single(value => value.GetProperty("gauge").ValueEquals("yard"));
        Assert.Equal(8.89, rain.GetProperty("isMm").GetDouble() - rain.GetProperty("wasMm").GetDouble(), 0.01);
        Assert.NotEmpty(corrections.GetProperty("programs").EnumerateArray());
        Assert.Equal(issued, File.ReadAllBytes(Report("2026-06-09", "advice.json")));

        Drop("yard-3.csv", string.Join('\n', [.. lines[..1], .. ExampleSite.WeatherUntil("2026-06-11 05:00").Split('\n').Where(line => string.CompareOrdinal(line, "2026-06-10 05:00") > 0 && line[0] == '2')]));
        Run("morning", "--date", "2026-06-11");
        Assert.DoesNotContain("Corrected since", File.ReadAllText(Report("2026-06-11", "report-full.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public void The_last_row_of_a_file_counts_though_its_first_one_said_otherwise_and_an_earlier_file_the_same()
    {
        Assert.Equal(0, Run("ingest", ExampleSite.Weather).ExitCode);
        var before = RainOn("2026-06-08");
        var lines = File.ReadAllLines(ExampleSite.Weather);
        var row = lines.Single(line => line.StartsWith("2026-06-08 23:00", StringComparison.Ordinal));

        // So many other days stand between the two that the first one is kept before the last is read.
        var between = Enumerable.Range(0, 2_200).Select(i => new DateTime(2025, 4, 1).AddHours(i).ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture) + row[16..]);
        var file = Path.Combine(_home.Path, "yard-twice.csv");
        File.WriteAllLines(file, [lines[0], row[..(row.LastIndexOf(',') + 1)] + "1.50", .. between, row]);
        Assert.Equal(0, Run("ingest", file).ExitCode);

        Assert.Equal(before, RainOn("2026-06-08"));
    }

    [Fact]
    public void A_late_file_is_told_as_a_correction_too()
    {
        Drop("yard-1.csv", ExampleSite.WeatherUntil("2026-06-07 05:00"));
        Run("morning", "--date", "2026-06-08");
        Drop("yard-2.csv", ExampleSite.WeatherUntil("2026-06-09 05:00"));
        Run("morning", "--date", "2026-06-09");

        var text = Text("2026-06-09");
        Assert.Contains("Rain at yard of Sun 7 June: was unknown, is 0.00 in", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gauge_of_which_nothing_is_known_has_the_rain_of_its_substitute_and_the_sheet_says_so()
    {
        var yaml = File.ReadAllText(_site.SiteFile);
        File.WriteAllText(_site.SiteFile, yaml.Replace(
            "    - { id: yard, station: yard }",
            "    - { id: yard, station: yard, substitute: barn }\n    - { id: barn, by_hand: true }",
            StringComparison.Ordinal));
        var lines = ExampleSite.WeatherUntil("2026-06-10 05:00").Split('\n');
        Drop("yard-1.csv", string.Join('\n', lines.Select(line => line.StartsWith("2026-06-08", StringComparison.Ordinal) ? line[..(line.LastIndexOf(',') + 1)] : line)));
        Drop("logbook.csv", "time,kind,where,value,unit,until,by,note\n2026-06-08,rain,gauge:barn,0.62,in,,,\n");
        Run("morning", "--date", "2026-06-10");

        Assert.Contains("nothing is known of gauge yard; the rain of gauge barn stands in", Text("2026-06-10"), StringComparison.Ordinal);
        var days = CsvRows.Of(Run("weather", "--from", "2026-06-08", "--to", "2026-06-08", "--format", "csv").Output);
        Assert.Equal(15.748, days.Number(days.Rows.Single(), "rain_mm")!.Value, 0.001);
    }

    [Fact]
    public void Normals_come_of_a_typical_year()
    {
        var path = Path.Combine(_home.Path, "typical.epw");
        File.WriteAllText(path, TypicalYear());
        var result = Run("weather", "normals", path, "--units", "metric");

        Assert.True(result.ExitCode == 0, result.ToString());
        var yaml = result.Output[result.Output.IndexOf("  normals:", StringComparison.Ordinal)..];
        File.WriteAllText(_site.SiteFile, File.ReadAllText(_site.SiteFile).Replace("soils:\n", yaml + "soils:\n", StringComparison.Ordinal));
        Assert.Equal(0, Run("check").ExitCode);
        Assert.DoesNotContain("normals are missing", Run("check").Output, StringComparison.Ordinal);

        // 0.1 mm in every hour of the year: 74.4 mm in January.
        Assert.Contains("rain: { unit: mm, values: [74, 67, 74, 72,", yaml, StringComparison.Ordinal);
    }

    [Fact]
    public void Too_short_a_history_gives_no_normals_and_says_which_months()
    {
        Drop("yard-1.csv", ExampleSite.WeatherUntil("2026-06-10 05:00"));
        Run("morning", "--date", "2026-06-10");
        var result = Run("weather", "normals");
        Assert.Equal(2, result.ExitCode);
        Assert.Contains("No reference ET of month 1, 2, 3", result.Error, StringComparison.Ordinal);
    }

    private static string TypicalYear()
    {
        var text = new System.Text.StringBuilder("LOCATION,Yardville,IL,USA,TMY3,725300,41.98,-87.92,-6.0,201.0\nDESIGN CONDITIONS,0\nTYPICAL/EXTREME PERIODS,0\nGROUND TEMPERATURES,0\nHOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0\nCOMMENTS 1,invented\nCOMMENTS 2,invented\nDATA PERIODS,1,1,Data,Sunday, 1/ 1,12/31\n");
        for (var hour = 0; hour < 8760; hour++)
        {
            var at = new DateTime(2001, 1, 1).AddHours(hour);
            var warm = 10 - (12 * Math.Cos((at.DayOfYear - 15) * 2 * Math.PI / 365)) + (6 * Math.Sin((at.Hour - 9) * Math.PI / 12));
            var sun = Math.Max(0, Math.Sin((at.Hour - 6) * Math.PI / 12)) * (450 - (250 * Math.Cos((at.DayOfYear - 10) * 2 * Math.PI / 365)));
            text.Append(CultureInfo.InvariantCulture, $"1990,{at.Month},{at.Day},{at.Hour + 1},60,?9?9,{warm:0.0},{warm - 5:0.0},70,99100,0,0,300,{sun:0},0,0,0,0,0,0,180,{3 + (hour % 7 / 10.0):0.0},3,3,16.0,77777,9,999999999,250,0.0800,0,88,0.200,0.1,1.0\n");
        }

        return text.ToString();
    }

    private double? RainOn(string date)
    {
        var days = CsvRows.Of(Run("weather", "--from", date, "--to", date, "--format", "csv").Output);
        return days.Number(days.Rows.Single(), "rain_mm");
    }

    private void Drop(string name, string text) => File.WriteAllText(Path.Combine(_site.Inbox, name), text);

    /// <summary>report-full.txt without its line breaks.</summary>
    private string Text(string date) => string.Join(' ', File.ReadAllText(Report(date, "report-full.txt")).Split((char[])[' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries));

    private string Report(string date, string name) => Path.Combine(_site.Path, "reports", date, name);

    private ProgramResult Run(params string[] arguments) => RunningProgram.Run([.. arguments, "--home", _home.Path]);
}
