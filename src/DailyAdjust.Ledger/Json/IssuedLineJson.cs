using System.Text.Json;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Ledger.Json;

internal sealed record IssuedAsideDto(string Station, double Percent, double MedianPercent);

internal sealed record IssuedLineDto(string Controller, string Program, string Advice, bool Asks, double? Percent = null, int? PauseDays = null, List<IssuedAsideDto>? SetAside = null, double? UncutPercent = null);

/// <summary>What a sheet says of each program, as text.</summary>
internal static class IssuedLineJson
{
    public static string Write(IReadOnlyList<IssuedLine> lines) => JsonSerializer.Serialize(
        [.. lines.Select(l => new IssuedLineDto(l.Program.Controller, l.Program.Program, Words.Of(l.Advice), l.Asks, l.Percent, l.PauseDays, l.SetAside?.Select(a => new IssuedAsideDto(a.Station, a.Percent, a.MedianPercent)).ToList(), l.UncutPercent))],
        LedgerJson.Readable.ListIssuedLineDto);

    public static IReadOnlyList<IssuedLine> Read(string json) =>
        [.. (JsonSerializer.Deserialize(json, LedgerJson.Readable.ListIssuedLineDto) ?? throw new JsonException("A sheet has no lines."))
            .Select(l => new IssuedLine(new ProgramKey(l.Controller, l.Program), Words.To<AdviceKind>(l.Advice), l.Percent, l.Asks, l.PauseDays) { SetAside = l.SetAside?.ConvertAll(a => new IssuedAside(a.Station, a.Percent, a.MedianPercent)), UncutPercent = l.UncutPercent })];
}
