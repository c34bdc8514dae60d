using System.Text.Json;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Ledger.Json;

/// <summary>Stations of one controller and, in the same order, their depletion: a third of the size of one object each.</summary>
internal sealed record ControllerStateDto(string Controller, List<string> Stations, List<double> DepletionMm);

internal sealed record SoilStateDto(DateOnly Date, List<ControllerStateDto> Controllers);

/// <summary>A soil state as text, bit for bit, in ordinal order of controller and station.</summary>
internal static class SoilStateJson
{
    public static string Write(SoilState state) => JsonSerializer.Serialize(
        new SoilStateDto(
            state.Date,
            [.. state.DepletionMm
                .OrderBy(d => d.Key.Controller, StringComparer.Ordinal)
                .ThenBy(d => d.Key.Station, StringComparer.Ordinal)
                .GroupBy(d => d.Key.Controller, StringComparer.Ordinal)
                .Select(g => new ControllerStateDto(g.Key, [.. g.Select(d => d.Key.Station)], [.. g.Select(d => d.Value)]))]),
        LedgerJson.Readable.SoilStateDto);

    public static SoilState Read(string json)
    {
        var dto = JsonSerializer.Deserialize(json, LedgerJson.Readable.SoilStateDto) ?? throw new JsonException("A soil state is empty.");
        return new SoilState(
            dto.Date,
            dto.Controllers
                .SelectMany(c => c.Stations.Zip(c.DepletionMm, (s, mm) => (Key: new StationKey(c.Controller, s), Mm: mm)))
                .ToDictionary(d => d.Key, d => d.Mm));
    }
}
