using System.Text;
using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>site.yaml and stations.csv as they stand in the folder now.</summary>
/// <param name="Yaml">Bytes of site.yaml.</param>
/// <param name="Stations">Bytes of stations.csv.</param>
/// <param name="Reading">What came of reading them.</param>
public sealed record DescriptionFiles(byte[] Yaml, byte[] Stations, SiteReading Reading)
{
    private const long Largest = 1_000_000;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Reads both; a file that cannot be read is a problem like any other.</summary>
    public static DescriptionFiles Read(SiteFolder folder)
    {
        var yaml = RegularFile.Read(folder.SiteFile, Largest, followLinks: true);
        var stations = RegularFile.Read(folder.StationsFile, Largest, followLinks: true);
        List<Problem> missing = [];
        if (yaml.Bytes is null)
        {
            missing.Add(new Problem("site.yaml", 1, 1, yaml.Why.TrimEnd('.'), "`dailyadjust new` writes one"));
        }

        if (stations.Bytes is null)
        {
            missing.Add(new Problem("stations.csv", 1, 1, stations.Why.TrimEnd('.'), "It stands beside site.yaml and has one row per station"));
        }

        return yaml.Bytes is null || stations.Bytes is null
            ? new([], [], new SiteReading(null, Corrects: false, missing))
            : new(yaml.Bytes, stations.Bytes, SiteReader.Read("site.yaml", Decode(yaml.Bytes), "stations.csv", Decode(stations.Bytes)));
    }

    /// <summary>UTF-8, with or without byte order mark; what is not UTF-8 came from an older spreadsheet and is read as Latin-1.</summary>
    public static string Decode(byte[] bytes)
    {
        try
        {
            return Strict.GetString(bytes).TrimStart('\uFEFF');
        }
        catch (DecoderFallbackException)
        {
            return Encoding.Latin1.GetString(bytes);
        }
    }
}
