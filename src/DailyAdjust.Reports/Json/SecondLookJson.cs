using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

// Keys of advice.json: a later look of the day.

internal sealed record SecondLookJson(string AsOf, string StartsFrom, bool AfterRound, double? EtoMm, string? EtoThrough, string? EtoStation, double? EtoRestMm)
{
    public static SecondLookJson? Of(SecondLook? look, SiteClock clock) => look is null ? null : new(
        Local(look.AsOf, clock),
        Local(look.StartsFrom, clock),
        look.AfterRound,
        Number(look.Eto?.Mm),
        Local(look.Eto?.Through, clock),
        look.Eto?.Station,
        Number(look.RestMm));
}
