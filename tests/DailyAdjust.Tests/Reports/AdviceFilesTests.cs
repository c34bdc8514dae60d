using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using DailyAdjust.Reports;
using Xunit;

namespace DailyAdjust.Tests.Reports;

public sealed class AdviceFilesTests
{
    [Fact]
    public void Advice_csv_follows_the_contract()
    {
        var lines = Rendered.Lines(ReportFiles.AdviceCsv);
        Assert.Equal("date,controller,program,setting,advice,percent,exact_percent,next_start,finishes,reason", lines[0]);
        Assert.Equal(12, lines.Count);
        Assert.Equal("2026-07-15,A,P1,90,leave,90,88.1235,2026-07-15T21:30,2026-07-16T01:20,90 % is good enough: at most 0.01 in would drain", lines[1]);
        Assert.Equal("2026-07-15,A,P2,100,skip,,12.5000,2026-07-15T21:30,,0.64 in fell since Tuesday; the ground holds until Saturday", lines[2]);
        Assert.Contains(lines, l => l.StartsWith("2026-07-15,B,P1,90,set,60,58.7654,", StringComparison.Ordinal) && l.EndsWith(",'=half of last night's run drained", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("2026-07-15,E,P1,100,off,,,", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("2026-07-15,E,P3,0,keep-off,0,,", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_sound_advice_no_row_has_a_number() =>
        Assert.All(Rendered.Lines(ReportFiles.AdviceCsv, InventedMorning.WithoutAdvice()).Skip(1), l => Assert.Contains(",as-set,,,", l, StringComparison.Ordinal));

    [Fact]
    public void Advice_json_fits_its_schema()
    {
        foreach (var morning in Rendered.EveryMorning)
        {
            using var json = JsonDocument.Parse(Rendered.File(ReportFiles.AdviceJson, morning));
            Assert.Empty(Schema().Problems(json.RootElement));
        }
    }

    [Theory]
    [InlineData("programs/0/advice", "\"hold\"")]
    [InlineData("programs/2/zones/0/depletionMm", "-1")]
    [InlineData("programs/0/nextStart", "\"2026-07-15 21:30\"")]
    [InlineData("programs/0/percent", "\"90\"")]
    [InlineData("programs/0/newKey", "1")]
    [InlineData("fit/pump/0/flow", "null")]
    [InlineData("revision", "1.5")]
    [InlineData("site", "\"\"")]
    public void The_schema_refuses_what_breaks_the_contract(string path, string value)
    {
        var json = JsonNode.Parse(Rendered.File(ReportFiles.AdviceJson))!;
        var steps = path.Split('/');
        var place = steps[..^1].Aggregate(json, (node, step) => int.TryParse(step, CultureInfo.InvariantCulture, out var i) ? node[i]! : node[step]!);
        place[steps[^1]] = JsonNode.Parse(value);
        using var broken = JsonDocument.Parse(json.ToJsonString());
        Assert.NotEmpty(Schema().Problems(broken.RootElement));
    }

    [Fact]
    public void The_schema_refuses_a_missing_key()
    {
        var json = JsonNode.Parse(Rendered.File(ReportFiles.AdviceJson))!;
        json["programs"]![0]!.AsObject().Remove("percent");
        using var broken = JsonDocument.Parse(json.ToJsonString());
        Assert.Single(Schema().Problems(broken.RootElement));
    }

    [Fact]
    public void Keys_of_the_contract_come_first_and_in_order()
    {
        using var json = JsonDocument.Parse(Rendered.File(ReportFiles.AdviceJson));
        var root = json.RootElement;
        Assert.Equal(["site", "date", "revision", "freshness", "programs", "fit"], Keys(root).Take(6));
        Assert.Equal(
            ["controller", "program", "setting", "advice", "percent", "exactPercent", "nextStart", "finishes", "reason", "zones"],
            Keys(root.GetProperty("programs")[0]).Take(10));
        Assert.Equal(["station", "percent", "depletionMm", "allowableMm", "canWait", "setAside"], Keys(root.GetProperty("programs")[2].GetProperty("zones")[0]).Take(6));
        Assert.Equal(["overlaps", "window", "pump"], Keys(root.GetProperty("fit")).Take(3));
        Assert.Equal(["from", "to", "flow", "capacity"], Keys(root.GetProperty("fit").GetProperty("pump")[0]));
    }

    [Fact]
    public void A_number_that_is_none_is_null_and_the_data_of_a_reason_are_in_ordinal_order()
    {
        using var json = JsonDocument.Parse(Rendered.File(ReportFiles.AdviceJson));
        var data = json.RootElement.GetProperty("programs")[2].GetProperty("chain")[0].GetProperty("data");
        Assert.Equal(["eto_mm", "rainMm"], Keys(data));
        Assert.Equal(JsonValueKind.Null, data.GetProperty("eto_mm").ValueKind);
    }

    private static IEnumerable<string> Keys(JsonElement element) => element.EnumerateObject().Select(p => p.Name);

    private static JsonSchemaSubset Schema()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "DailyAdjust.sln")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests must run inside the source tree.");
        }

        return new JsonSchemaSubset(JsonDocument.Parse(File.ReadAllText(Path.Combine(folder.FullName, "docs", "advice.schema.json"))).RootElement);
    }
}
