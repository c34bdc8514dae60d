using DailyAdjust.Core.Sites;
using DailyAdjust.Files.Yaml;

namespace DailyAdjust.Files.Sites;

/// <summary>
/// Reads a site's description: site.yaml and stations.csv together. Strict: an unknown key, a wrong unit or a missing
/// value is an error, all of them are told at once, and a site with any error is not used.
/// </summary>
public static class SiteReader
{
    /// <param name="siteYamlName">The name by which problems call the first file.</param>
    /// <param name="yamlText">Its text, at most 1 MB.</param>
    /// <param name="stationsCsvName">The name by which problems call the second file.</param>
    /// <param name="csvText">Its text, at most 1 MB.</param>
    public static SiteReading Read(string siteYamlName, string yamlText, string stationsCsvName, string csvText)
    {
        var yaml = new ProblemList(siteYamlName);
        if (YamlTreeReader.Read(yamlText, yaml) is not { } root)
        {
            return new(null, Corrects: false, yaml.InOrder());
        }

        var draft = SiteDraft.Read(new Section(root, "", root, yaml));
        var csv = new ProblemList(stationsCsvName);
        var stations = StationsReader.Read(csvText, draft, csv);
        StationChecks.Run(draft, stations, yaml, csv);

        // Rows that could not be read would give cause for reports without cause.
        StationGroup[] notTogether = csv.HasErrors ? [] : [.. draft.NotTogether.Select(g => g.Find([.. stations.Select(s => s.Station.Key)], yaml))];
        var good = !yaml.HasErrors && !csv.HasErrors;
        return new(
            good ? draft.Site with { Stations = [.. stations.Select(s => s.Station)], NotTogether = notTogether } : null,
            draft.Corrects,
            [.. yaml.InOrder(), .. csv.InOrder()]);
    }
}
