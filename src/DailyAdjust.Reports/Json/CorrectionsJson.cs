using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

/// <summary>`corrections` of advice.json: what is known otherwise now than to the sheet before; left out where nothing is.</summary>
internal sealed record CorrectionsJson(string Sheet, int Issue, IReadOnlyList<WeatherCorrectionJson> Weather, IReadOnlyList<AdviceCorrectionJson> Programs)
{
    public static CorrectionsJson? Of(Corrections? corrections) => corrections is null ? null : new(
        CodeWords.Date(corrections.Sheet),
        corrections.Issue,
        [.. corrections.Weather.Select(w => new WeatherCorrectionJson(CodeWords.Date(w.Date), w.Gauge.Length == 0 ? null : w.Gauge, Number(w.WasMm), Number(w.IsMm)))],
        [.. corrections.Advice.Select(a => new AdviceCorrectionJson(
            a.Program.Controller, a.Program.Program, AdviceCode.Of(a.Was), Number(a.WasPercent), AdviceCode.Of(a.Would), Number(a.WouldPercent)))]);
}

/// <summary>A day's rain at a gauge, or (without one) its reference ET, mm; null = not known.</summary>
internal sealed record WeatherCorrectionJson(string Date, string? Gauge, double? WasMm, double? IsMm);

internal sealed record AdviceCorrectionJson(string Controller, string Program, string Was, double? WasPercent, string Would, double? WouldPercent);
