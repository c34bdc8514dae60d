using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Ledger;
using DailyAdjust.Service.Home;
using DailyAdjust.Service.Sites;
using Microsoft.Extensions.Time.Testing;

namespace DailyAdjust.ServiceTests.Controllers;

/// <summary>
/// A home with a course of round numbers: on the equator, UTC, ETo 5 mm a day, Kc 1, 10 mm of water an hour, TAW 100 mm, allowable depletion 50 mm and reached on
/// the first morning. Every zone is so 55 mm down in the evening and needs 10 mm, an hour, to stay within 50 mm until the next evening.
/// </summary>
internal sealed partial class SmallCourse : IDisposable
{
    public const string Monday = "2026-05-04";

    private readonly TestHome _home = new();
    private readonly SiteFolder _site;

    /// <param name="controllers">Entries of the list in site.yaml, from the fourth column on.</param>
    /// <param name="stations">stations.csv with its header.</param>
    /// <param name="more">Further sections of site.yaml.</param>
    /// <param name="soil">full, allowable or assumed.</param>
    /// <param name="area">Keys of both areas after the common ones.</param>
    public SmallCourse(string controllers, string stations, string more = "", string soil = "allowable", string area = "leave_empty: 90 %")
    {
        _site = _home.EmptySite();
        File.WriteAllText(_site.SiteFile, $$"""
            site: { name: Round Numbers, latitude: 0, longitude: 0, elevation: 0 m, time_zone: Etc/UTC, units: metric, start: 2026-05-04, start_soil: {{soil}} }
            weather:
              stations:
                - id: yard
                  files: "yard-*.csv"
                  format: csv
                  wind_height: 2 m
                  time: { column: Day, pattern: "yyyy-MM-dd", clock: standard, stamp: start }
                  interval: 1 d
                  eto: supplied
                  columns: { reference_et: "ET (mm)", rain: "Rain (mm)" }
              gauges: [ { id: yard, station: yard } ]
              normals: { eto: { unit: mm/day, values: [5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5, 5] } }
            soils:
              loam: { available_water: 200 mm/m, field_capacity: 30 %, intake_rate: 8 mm/h, surface_storage: 1 mm }
              sand: { available_water: 200 mm/m, field_capacity: 30 % }
            areas:
              greens: { grass: invented, kc: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], root_depth: 0.5 m, soil: sand, allowable_depletion: 50 %, efficiency: 100 %, {{area}} }
              rough: { grass: invented, kc: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], root_depth: 0.5 m, soil: sand, allowable_depletion: 50 %, efficiency: 100 %, {{area}} }
              bank: { grass: invented, kc: [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1], root_depth: 0.5 m, soil: loam, allowable_depletion: 50 %, efficiency: 100 %, {{area}} }
            {{more}}
            controllers:
            {{controllers}}

            """);
        File.WriteAllText(_site.StationsFile, stations + "\n");
    }

    /// <summary>A box with one program or two, every night.</summary>
    public static string Box(string id, string percent, string more, params (string Id, string Starts)[] programs) => $$"""
          - id: {{id}}
            percent: {{percent}}
            {{more}}
            programs:
        {{string.Join('\n', programs.Select(p => $"      - {{ id: {p.Id}, starts: [{p.Starts}], days: every day }}"))}}
        """;

    public void Dispose() => _home.Dispose();

    public void Log(params string[] rows)
    {
        Directory.CreateDirectory(_site.Inbox);
        File.WriteAllText(Path.Combine(_site.Inbox, $"log-{Guid.NewGuid():N}.csv"), string.Join('\n', ["time,kind,where,value,unit,until,by,note", .. rows]) + "\n");
    }

    /// <summary>A weather file with rows of its own: date, ETo, rain.</summary>
    public void Weather(params string[] rows)
    {
        Directory.CreateDirectory(_site.Inbox);
        File.WriteAllLines(Path.Combine(_site.Inbox, "yard-own.csv"), ["Day,ET (mm),Rain (mm)", .. rows]);
    }

    /// <summary>Monday's round.csv comes back with some programs' `done` filled in.</summary>
    public ProgramResult Return(params (string Program, string Done)[] answers) => Run("ingest", Filled(answers));

    /// <summary>Monday's round.csv with some programs' `done` filled in.</summary>
    public string Filled(params (string Program, string Done)[] answers)
    {
        var lines = File.ReadAllLines(Path.Combine(_site.ReportFolder(new DateOnly(2026, 5, 4)), "round.csv"));
        var columns = lines[0].TrimStart('\uFEFF').Split(',').ToList();
        var filled = lines.Skip(1).Select(line =>
        {
            var cells = line.Split(',');
            cells[columns.IndexOf("done")] = answers.FirstOrDefault(a => string.Equals(a.Program, cells[columns.IndexOf("program")], StringComparison.Ordinal)).Done ?? "";
            return string.Join(',', cells);
        });
        var file = Path.Combine(_home.Path, "round.csv");
        File.WriteAllLines(file, [lines[0], .. filled]);
        return file;
    }

    /// <summary>One row of a date's round.csv filled in; cells that are named take another value.</summary>
    public string FilledRow(string date, string sheet, params (string Column, string Value)[] cells)
    {
        var lines = File.ReadAllLines(Path.Combine(_site.ReportFolder(DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture)), "round.csv"));
        var columns = lines[0].TrimStart('\uFEFF').Split(',').ToList();
        var row = lines.Skip(1).Select(l => l.Split(',')).Single(l => string.Equals(l[columns.IndexOf("sheet")], sheet, StringComparison.Ordinal));
        foreach (var (column, value) in cells)
        {
            row[columns.IndexOf(column)] = value;
        }

        var file = Path.Combine(_home.Path, "row.csv");
        File.WriteAllLines(file, [lines[0], string.Join(',', row)]);
        return file;
    }

    public ProgramResult Run(string command, params string[] arguments) => RunningProgram.Run([command, "--home", _home.Path, .. arguments]);

    /// <summary>The same at a time of the course's clock.</summary>
    public ProgramResult RunAt(string time, string command, params string[] arguments) => InProcess.Run(
        new FakeTimeProvider(DateTimeOffset.ParseExact(time, "yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal)), [command, "--home", _home.Path, .. arguments]);

    /// <summary>Every setting that stands in the logbook: its time, place and number.</summary>
    public IReadOnlyList<string> Settings()
    {
        using var site = OpenSite.Open(_site, LedgerMode.Read);
        return [.. site.Ledger.Logbook.Effective().Where(e => e.Kind == LogKind.Setting).Select(e => FormattableString.Invariant($"{e.Time.Date:MM-dd} {e.Time.Clock:HH:mm} {e.Where} {e.Value}"))];
    }

    /// <summary>A file for the next morning to take.</summary>
    public void Drop(string name, string file) => File.Copy(file, Path.Combine(_site.Inbox, name));

    public string InboxFolder => _site.Inbox;

    /// <summary>One morning, with weather up to the day before.</summary>
    public Sheet Morning(string date = Monday)
    {
        var day = DateOnly.ParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture);
        Directory.CreateDirectory(_site.Inbox);
        File.WriteAllLines(
            Path.Combine(_site.Inbox, $"yard-{date}.csv"),
            ["Day,ET (mm),Rain (mm)", .. Enumerable.Range(-3, 3 + day.DayNumber - new DateOnly(2026, 5, 4).DayNumber).Select(n => $"{new DateOnly(2026, 5, 4).AddDays(n):yyyy-MM-dd},5.0,0.0")]);
        var result = Run("morning", "--date", date);
        if (result.ExitCode != 0)
        {
            throw new InvalidOperationException(result.ToString());
        }

        return Issued(day);
    }

    /// <summary>A sheet as it lies in its folder.</summary>
    public Sheet Issued(DateOnly day)
    {
        var folder = _site.ReportFolder(day);
        return new Sheet(File.ReadAllText(Path.Combine(folder, "report-full.txt")), File.ReadAllText(Path.Combine(folder, "report.html")), File.ReadAllText(Path.Combine(folder, "advice.json")));
    }

    /// <summary>A sheet as it was written; text and page without their line breaks.</summary>
    internal sealed partial class Sheet(string text, string html, string json)
    {
        private readonly JsonElement _json = JsonDocument.Parse(json).RootElement;

        public string Text { get; } = Joined(text);

        public string Page { get; } = Joined(WebUtility.HtmlDecode(Tag().Replace(html, " ")));

        public JsonElement Freshness => _json.GetProperty("freshness");

        public JsonElement Ground => _json.GetProperty("ground");

        public JsonElement Exceptions => _json.GetProperty("exceptions");

        public JsonElement Fit => _json.GetProperty("fit");

        public JsonElement Program(string address) => _json.GetProperty("programs").EnumerateArray()
            .Single(p => string.Equals($"{p.GetProperty("controller").GetString()}/{p.GetProperty("program").GetString()}", address, StringComparison.Ordinal));

        public (string Advice, double? Percent) Said(string address)
        {
            var program = Program(address);
            return (program.GetProperty("advice").GetString()!, program.GetProperty("percent").ValueKind == JsonValueKind.Null ? null : program.GetProperty("percent").GetDouble());
        }

        private static string Joined(string lines) => string.Join(' ', lines.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

        [GeneratedRegex("<[^>]*>")]
        private static partial Regex Tag();
    }
}
