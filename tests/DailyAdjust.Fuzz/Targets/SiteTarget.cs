using DailyAdjust.Files.Sites;
using DailyAdjust.Fuzz.Checks;
using DailyAdjust.Service.Sites;

namespace DailyAdjust.Fuzz.Targets;

/// <summary>site.yaml, beside its good stations.csv, or another's.</summary>
internal sealed class SiteTarget() : Target("site", 22, [.. Samples.Courses.Select(c => Samples.Bytes(c.Yaml))])
{
    public override IReadOnlyList<string> Separators => [": ", ", ", " - ", "\n  "];

    public override void Try(byte[] bytes, Random random)
    {
        var text = DescriptionFiles.Decode(bytes);
        var isItsOwn = random.Next(3) > 0;
        Description.Check(text, Samples.CourseOf(course => isItsOwn && course.IsSiteOf(text), random).Csv);
    }
}

/// <summary>stations.csv, beside its good site.yaml.</summary>
internal sealed class StationsTarget() : Target("stations", 14, [.. Samples.Courses.Select(c => Samples.Bytes(c.Csv))])
{
    public override void Try(byte[] bytes, Random random)
    {
        var text = DescriptionFiles.Decode(bytes);
        Description.Check(Samples.CourseOf(course => course.IsStationsOf(text), random).Yaml, text);
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
