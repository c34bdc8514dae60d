using System.Text.Json;
using DailyAdjust.Service.Home;

namespace DailyAdjust.ServiceTests.Fallback;

/// <summary>A home of the example site whose weather a test spoils, and what the real program makes of it.</summary>
internal sealed class FallbackHome : IDisposable
{
    private readonly TestHome _home = new();

    public FallbackHome() => Site = ExampleSite.PutInto(_home);

    public SiteFolder Site { get; }

    public void Dispose() => _home.Dispose();

    /// <summary>Changes texts of site.yaml, each of which must stand in it.</summary>
    public FallbackHome With(params (string From, string To)[] edits)
    {
        var yaml = File.ReadAllText(Site.SiteFile);
        foreach (var (from, to) in edits)
        {
            yaml = yaml.Contains(from, StringComparison.Ordinal)
                ? yaml.Replace(from, to, StringComparison.Ordinal)
                : throw new InvalidOperationException($"site.yaml has no \"{from}\".");
        }

        File.WriteAllText(Site.SiteFile, yaml);
        return this;
    }

    /// <summary>Puts stations (and what else stands above `gauges:`) in place of the example's.</summary>
    public FallbackHome WithStations(string stations)
    {
        var yaml = File.ReadAllText(Site.SiteFile);
        var begin = yaml.IndexOf("    - id: yard\n", StringComparison.Ordinal);
        File.WriteAllText(Site.SiteFile, yaml[..begin] + stations.ReplaceLineEndings("\n") + yaml[yaml.IndexOf("  gauges:", StringComparison.Ordinal)..]);
        return this;
    }

    /// <summary>The example's station under another id, with lines more.</summary>
    public string StationLike(string id, string more = "")
    {
        var yaml = File.ReadAllText(Site.SiteFile);
        var begin = yaml.IndexOf("    - id: yard\n", StringComparison.Ordinal);
        return yaml[begin..yaml.IndexOf("  gauges:", StringComparison.Ordinal)].Replace("yard", id, StringComparison.Ordinal) + more;
    }

    public void Drop(string name, string text) => File.WriteAllText(Path.Combine(Site.Inbox, name), text);

    /// <summary>One morning through the real program.</summary>
    public FallbackSheet Morning(string date)
    {
        Run("morning", "--date", date);
        var folder = Path.Combine(Site.Path, "reports", date);
        return new(File.ReadAllText(Path.Combine(folder, "report-full.txt")), File.ReadAllText(Path.Combine(folder, "advice.json")));
    }

    /// <summary>A day as `weather` prints it from the ledger.</summary>
    public FallbackDay Day(string date)
    {
        var rows = CsvRows.Of(Run("weather", "--from", date, "--to", date, "--format", "csv"));
        return new(rows, rows.Rows.Single());
    }

    public string Run(string command, params string[] arguments) => Ran(command, arguments).Output;

    public ProgramResult Ran(string command, params string[] arguments)
    {
        var result = RunningProgram.Run([command, "--home", _home.Path, .. arguments]);
        return result.ExitCode == 0 ? result : throw new InvalidOperationException(result.ToString());
    }
}

/// <summary>One row of `weather`.</summary>
internal sealed class FallbackDay(CsvRows rows, string[] row)
{
    public string Station => rows.Text(row, "station");

    public string Basis => rows.Text(row, "eto_basis");

    public string Estimated => rows.Text(row, "estimated");

    public double EtoMm => rows.Number(row, "eto_mm")!.Value;

    public double? RainMm => rows.Number(row, "rain_mm");
}

/// <summary>A sheet as it was written.</summary>
internal sealed class FallbackSheet(string text, string json)
{
    private readonly JsonElement _json = JsonDocument.Parse(json).RootElement;

    /// <summary>report-full.txt without its line breaks.</summary>
    public string Text { get; } = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    /// <summary>What advice.json says is assumed.</summary>
    public IReadOnlyList<string> Assumed => [.. _json.GetProperty("freshness").GetProperty("assumed").EnumerateArray().Select(a => a.GetString()!)];

    public JsonElement Json => _json;

    public JsonElement Freshness => _json.GetProperty("freshness");

    public JsonElement Program(string controller, string program) =>
        _json.GetProperty("programs").EnumerateArray().Single(p => p.GetProperty("controller").ValueEquals(controller) && p.GetProperty("program").ValueEquals(program));
}
