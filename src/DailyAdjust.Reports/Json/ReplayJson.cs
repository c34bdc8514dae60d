using System.Text.Json;
using System.Text.Json.Serialization;
using DailyAdjust.Core.Replay;
using DailyAdjust.Reports.Tables;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Json;

/// <summary>Writes a replay as JSON: indented, LF, no culture, keys in the order of the contract (docs/replay.md).</summary>
public static class ReplayJson
{
    private const double Grid = 1e4;

    private static readonly ReplayJsonContext Context = new(new JsonSerializerOptions
    {
        WriteIndented = true,
        NewLine = "\n",
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        Encoder = TableJson.Encoder,
    });

    /// <param name="replay">What came of it.</param>
    /// <param name="site">The site's name.</param>
    /// <param name="visits">As it was asked for.</param>
    /// <param name="rainKnownAhead">The true rain was the forecast.</param>
    public static string Write(ReplayResult replay, string site, string visits, bool rainKnownAhead) => JsonSerializer.Serialize(
        new ReplayDocument([.. replay.Policies.Select(Policy)], site, CodeWords.Date(replay.From), CodeWords.Date(replay.To), visits, rainKnownAhead),
        Context.ReplayDocument) + "\n";

    private static ReplayPolicyJson Policy(PolicyResult p) => new(
        ReplayWords.Of(p.Policy),
        On(p.Figures.AdequacyPercent),
        On(p.Figures.ExcessPercent),
        On(p.Figures.WaterMm),
        On(p.Figures.StressDays),
        p.Visits,
        p.Changes,
        [.. p.Stations.Select(Station)],
        Depths(p.Figures),
        [.. p.Areas.Select(a => new ReplayAreaJson(
            a.Area, On(a.Figures.AdequacyPercent), On(a.Figures.ExcessPercent), On(a.Figures.WaterMm), On(a.Figures.StressDays), Depths(a.Figures)))],
        [.. p.Programs.Select(x => new ReplayProgramJson(x.Program.Controller, x.Program.Program, x.Changes, x.Mornings))]);

    private static ReplayStationJson Station(StationResult s) => new(
        s.Station.Key.ToString(),
        On(s.Figures.AdequacyPercent),
        On(s.Figures.ExcessPercent),
        On(s.Figures.WaterMm),
        On(s.Figures.StressDays),
        s.Station.Area.Name,
        s.Station.GroundM2 is { } ground ? On(ground) : null,
        Depths(s.Figures));

    private static ReplayDepthsJson Depths(ReplayFigures f) => new(On(f.NetMm), On(f.DrainageMm), On(f.RunoffMm), On(f.RainRunoffMm), On(f.EtcMm));

    private static double On(double value) => Math.Round(value * Grid) / Grid;
}

internal sealed record ReplayDocument(IReadOnlyList<ReplayPolicyJson> Policies, string Site, string From, string To, string Visits, bool RainKnownAhead);

internal sealed record ReplayPolicyJson(
    string Name,
    double AdequacyPercent,
    double ExcessPercent,
    double WaterMm,
    double StressDays,
    int Visits,
    int Changes,
    IReadOnlyList<ReplayStationJson> Stations,
    ReplayDepthsJson Depths,
    IReadOnlyList<ReplayAreaJson> Areas,
    IReadOnlyList<ReplayProgramJson> Programs);

internal sealed record ReplayStationJson(
    string Station, double AdequacyPercent, double ExcessPercent, double WaterMm, double StressDays, string Area, double? GroundM2, ReplayDepthsJson Depths);

internal sealed record ReplayAreaJson(string Area, double AdequacyPercent, double ExcessPercent, double WaterMm, double StressDays, ReplayDepthsJson Depths);

internal sealed record ReplayDepthsJson(double NetMm, double DrainageMm, double RunoffMm, double RainRunoffMm, double EtcMm);

internal sealed record ReplayProgramJson(string Controller, string Program, int Changes, int Mornings);

[JsonSerializable(typeof(ReplayDocument))]
internal sealed partial class ReplayJsonContext : JsonSerializerContext;
