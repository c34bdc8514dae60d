using System.Text.Json;

namespace DailyAdjust.Reports.Json;

/// <summary>
/// What a person does by a sheet, without what the sheet knows and why: the document with everything that is only known left out. A key that is new is asked until it is left out here,
/// so that a mail too many goes out rather than one too few.
/// </summary>
internal static class SheetAsks
{
    /// <returns>The same text for two sheets by which a person would do the same.</returns>
    public static string Of(AdviceDocument d) => JsonSerializer.Serialize(
        d with
        {
            Site = "",
            Date = "",
            Revision = 0,
            Freshness = d.Freshness is null ? null! : Asked(d.Freshness),
            Programs = [.. d.Programs.Select(Asked)],
            Fit = null!,
            Issue = 0,
            ReplacesIssue = null,
            SiteName = "",
            TimeZone = "",
            AsOf = "",
            Notices = [],
            Forecast = null,
            Corrections = null,
            IfVisited = [],
            Standing = [],
            Exceptions = d.Exceptions is null ? null! : Asked(d.Exceptions),
            Ground = d.Ground is null ? null! : Asked(d.Ground),
            SecondLook = null,
            SettingsNotUsed = null,
        },
        AdviceJson.Contract);

    private static FreshnessJson Asked(FreshnessJson f) => f with
    {
        WeatherThrough = null,
        Station = "",
        NoAdviceSince = null,
        Assumed = [],
        UnknownRain = [],
        UnansweredRounds = [],
        NeverConfirmed = [],
        ExpectedEtoMm = null,
        AssumedSoil = [],
        PassedOverRounds = null,
    };

    private static ProgramJson Asked(ProgramJson p) => p with
    {
        Setting = 0,
        ExactPercent = null,
        NextStart = null,
        Finishes = null,
        Reason = "",
        Zones = [],
        Name = "",
        Confirmed = false,
        Chain = [],
        LookAgain = null,
        OffUntil = null,
        After = null,
        Shortfall = null,
        Unanswered = null,
        PausedUntil = null,
        Fault = null,
    };

    private static ExceptionsJson Asked(ExceptionsJson e) => e with { RainSwitches = [], Season = [], Stage = null, Night = [], TakenOutRuns = null };

    /// <summary>Where to go with hose and probe; the depths change with every hour, and are read off the sheet that is at hand.</summary>
    private static GroundJson Asked(GroundJson g) => g with
    {
        Driest = [.. (g.Driest ?? []).Select(d => new DryZoneJson(d.Controller, d.Station, 0, 0, 0, null, "", null, Probed: false, 0, RateAssumed: false, "", null)).OrderBy(d => d.Controller, StringComparer.Ordinal).ThenBy(d => d.Station, StringComparer.Ordinal)],
        Spots = [.. (g.Spots ?? []).Select(s => s with { Percent = 0, MissingMm = null, Note = "" })],
        Probes = [],
        ByHand = [.. (g.ByHand ?? []).Select(h => new ByHandJson(h.Controller, h.Station, "", WasFull: false, 0, null, 0, null))],
        Minutes = [],
    };
}
