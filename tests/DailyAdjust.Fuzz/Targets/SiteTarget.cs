using DailyAdjust.Files.Sites;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>site.yaml, beside a good stations.csv.</summary>
internal sealed class SiteTarget() : Target("site", 22, [.. Samples.Descriptions.Select(d => Samples.Bytes(d.Yaml))])
{
    public override IReadOnlyList<string> Separators => [": ", ", ", " - ", "\n  "];

    public override void Try(byte[] bytes, Random random) =>
        Description.Check(DescriptionFiles.Decode(bytes), Samples.Descriptions[random.Next(Samples.Descriptions.Count)].Csv);
}

/// <summary>stations.csv, beside its good site.yaml.</summary>
internal sealed class StationsTarget() : Target("stations", 14, [.. Samples.Descriptions.Select(d => Samples.Bytes(d.Csv))])
{
    public override void Try(byte[] bytes, Random random)
    {
        // Most come from the file whose columns are in their header.
        var text = DescriptionFiles.Decode(bytes);
        var fitting = Samples.Descriptions.FirstOrDefault(d => text.StartsWith(d.Csv[..20], StringComparison.Ordinal), Samples.Descriptions[random.Next(Samples.Descriptions.Count)]);
        Description.Check(fitting.Yaml, text);
    }
}

/// <summary>What must hold of site.yaml and stations.csv, whatever they say.</summary>
internal static class Description
{
    public static void Check(string yaml, string csv)
    {
        var reading = SiteReader.Read("site.yaml", yaml, "stations.csv", csv);
        Hold.That(reading.Site is null == reading.Problems.Any(p => p.Severity == Files.Severity.Error), "a site is used in spite of an error, or not used without one");
        Places.Check(reading.Problems.Where(p => p.File.EndsWith("yaml", StringComparison.Ordinal)), "site.yaml", yaml, isYaml: true);
        Places.Check(reading.Problems.Where(p => !p.File.EndsWith("yaml", StringComparison.Ordinal)), "stations.csv", csv);
        Hold.Same(reading, SiteReader.Read("site.yaml", yaml, "stations.csv", csv));
        if (reading.Site is { } site)
        {
            SiteRanges.Check(site);
            var fault = Tests.Files.Sites.MeasuredStations.Fault(yaml, csv, site);
            Hold.That(fault is null, $"stations.csv with measured rates: {fault}");
        }
    }
}
