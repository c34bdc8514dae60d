using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Json;

// Keys of advice.json: a later look of the day.

internal sealed record SecondLookJson(string AsOf, string StartsFrom, bool AfterRound, double? EtoMm, string? EtoThrough, string? EtoStation, double? EtoRestMm)
{
    public static SecondLookJson? Of(SecondLook? look, SiteClock clock) => look is null ? null : new(
        CodeWords.Minute(clock.ToLocal(look.AsOf)),
        CodeWords.Minute(clock.ToLocal(look.StartsFrom)),
        look.AfterRound,
        look.Eto is { } eto ? AdviceDocumentBuilder.Number(eto.Mm) : null,
        look.Eto is { } known ? CodeWords.Minute(clock.ToLocal(known.Through)) : null,
        look.Eto?.Station,
        look.RestMm is { } rest ? AdviceDocumentBuilder.Number(rest) : null);
}
