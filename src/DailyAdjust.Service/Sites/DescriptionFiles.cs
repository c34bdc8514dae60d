using System.Text;
using System.Text.Unicode;
using DailyAdjust.Files;
using DailyAdjust.Files.Sites;
using DailyAdjust.Ledger.Inputs;
using DailyAdjust.Service.Home;

namespace DailyAdjust.Service.Sites;

/// <summary>site.yaml and stations.csv as they stand in the folder now; read into a site only when somebody asks.</summary>
public sealed class DescriptionFiles
{
    private const long Largest = 1_000_000;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    private readonly Lazy<SiteReading> _reading;

    private DescriptionFiles(byte[] yaml, byte[] stations, Func<SiteReading> read) => (Yaml, Stations, _reading) = (yaml, stations, new(read));

    /// <summary>Bytes of site.yaml.</summary>
    public byte[] Yaml { get; }

    /// <summary>Bytes of stations.csv.</summary>
    public byte[] Stations { get; }

    /// <summary>By which two descriptions are told apart.</summary>
    public string Sha => SiteTexts.ShaOf(Yaml, Stations);

    /// <summary>What comes of reading them; a file that is not there is a problem like any other.</summary>
    public SiteReading Reading => _reading.Value;

    public static DescriptionFiles Of(SiteFolder folder)
    {
        var yaml = RegularFile.Read(folder.SiteFile, Largest, followLinks: true);
        var stations = RegularFile.Read(folder.StationsFile, Largest, followLinks: true);
        List<Problem> missing = [];
        if (yaml.Bytes is null)
        {
            missing.Add(Missing("site.yaml", yaml, "`dailyadjust new` writes one"));
        }

        if (stations.Bytes is null)
        {
            missing.Add(Missing("stations.csv", stations, "It stands beside site.yaml and has one row per station"));
        }

        return yaml.Bytes is null || stations.Bytes is null
            ? new(yaml.Bytes ?? [], stations.Bytes ?? [], () => new SiteReading(null, Corrects: false, missing))
            : new(yaml.Bytes, stations.Bytes, () => SiteReader.Read("site.yaml", Decode(yaml.Bytes), "stations.csv", Decode(stations.Bytes)));
    }

    private static Problem Missing(string name, FileContent content, string hint) => content.Trouble == FileTrouble.TooLarge
        ? new(name, 1, 1, "the file is larger than 1 MB", "look whether it is the right one: a description never needs that much")
        : new(name, 1, 1, content.Why.TrimEnd('.'), hint);

    /// <summary>UTF-8, with or without byte order mark; what is not UTF-8 came from an older spreadsheet and is read as Latin-1.</summary>
    public static string Decode(byte[] bytes) => EncodingOf(bytes).GetString(bytes).TrimStart('\uFEFF');

    /// <summary>The bytes of an edited text, in the encoding of the old ones and with their byte order mark.</summary>
    /// <param name="bytes">The old ones.</param>
    /// <param name="edit">Takes the old text, byte order mark included, and gives the new one.</param>
    public static byte[] Edited(byte[] bytes, Func<string, string> edit)
    {
        var encoding = EncodingOf(bytes);
        return encoding.GetBytes(edit(encoding.GetString(bytes)));
    }

    private static Encoding EncodingOf(byte[] bytes) => Utf8.IsValid(bytes) ? Strict : Encoding.Latin1;
}
