using System.Text.Json.Serialization;

namespace DailyAdjust.Reports.Json;

// Plain data whose property names are the keys of advice.json. Depths mm, flows L/min, times on the site's clock.
// New keys go to the end; docs/advice.schema.json describes them all.

internal sealed record AdviceDocument(
    string Site,
    string Date,
    int Revision,
    FreshnessJson Freshness,
    IReadOnlyList<ProgramJson> Programs,
    FitJson Fit,
    int Issue,
    int? ReplacesIssue,
    string SiteName,
    string TimeZone,
    string AsOf,
    IReadOnlyList<string> Notices,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ForecastJson? Forecast,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] CorrectionsJson? Corrections,
    IReadOnlyList<VisitWorthJson> IfVisited,
    IReadOnlyList<StandingJson> Standing,
    ExceptionsJson Exceptions,
    GroundJson Ground,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] SecondLookJson? SecondLook,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] RunByHandJson? RunByHand,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<BoxToVerifyJson>? BoxesToVerify,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] ClockChangeJson? ClockChange,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<SettingNotUsedJson>? SettingsNotUsed);

internal sealed record VisitWorthJson(
    string Controller, string Program, string NextVisit, string Advice, double? Percent, double WastedMm, double? WastedL, int ZonesBeyond, int DaysBeyond, double BeyondMm, bool Alert);

internal sealed record FreshnessJson(
    string? WeatherThrough,
    string Station,
    string? NoAdvice,
    string? NoAdviceSince,
    IReadOnlyList<string> Assumed,
    IReadOnlyList<UnknownRainJson> UnknownRain,
    IReadOnlyList<string> UnansweredRounds,
    IReadOnlyList<ProgramKeyJson> NeverConfirmed,
    double? ExpectedEtoMm,
    IReadOnlyList<AssumedSoilJson> AssumedSoil,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? PassedOverRounds);

internal sealed record AssumedSoilJson(string Controller, string Station, string Since);

internal sealed record UnknownRainJson(string Gauge, string Date, double MeasuredPartMm);

internal sealed record ProgramKeyJson(string Controller, string Program);

internal sealed record ProgramJson(
    string Controller,
    string Program,
    double Setting,
    string Advice,
    double? Percent,
    double? ExactPercent,
    string? NextStart,
    string? Finishes,
    string Reason,
    IReadOnlyList<ZoneJson> Zones,
    string Name,
    bool Confirmed,
    bool NeedsVisit,
    IReadOnlyList<ReasonJson> Chain,
    string? LookAgain,
    string? OffUntil,
    AfterJson? After,
    StopRuleJson? StopRule,
    ShortfallJson? Shortfall,
    IReadOnlyList<NewMinutesJson> NewMinutes,
    UnansweredJson? Unanswered,
    int? PauseDays,
    string? PausedUntil,
    IReadOnlyList<TakenOutJson> TakenOut,
    IReadOnlyList<StationsOutJson> StationsOut,
    FaultJson? Fault,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? GrowInBegins,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] StartsInPlaceJson? StartsInPlace);

internal sealed record StartsInPlaceJson(int Starts, double ApartMinutes, int ThatFit, double? NextOwnMinutes);

internal sealed record ZoneJson(
    string Station,
    double? Percent,
    double DepletionMm,
    double AllowableMm,
    bool CanWait,
    bool SetAside,
    string Name,
    string Area,
    bool Due,
    double ShortMm,
    double DrainsMm);

internal sealed record ReasonJson(string Code, string Words, SortedDictionary<string, double?> Data);

internal sealed record AfterJson(string On, double Percent);

internal sealed record StopRuleJson(
    string Gauge, double RainMm, string Before, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? AlsoAt);

internal sealed record ShortfallJson(double DepthMm, double Minutes);

internal sealed record NewMinutesJson(string Station, double From, double To);

internal sealed record UnansweredJson(string Sheet, string Advice, double? Percent, AlternativeJson IfDone, AlternativeJson AsLogged, int? PauseDays);

internal sealed record AlternativeJson(string Advice, double? Percent);

internal sealed record FitJson(
    IReadOnlyList<OverlapJson> Overlaps,
    IReadOnlyList<WindowJson> Window,
    IReadOnlyList<PumpJson> Pump,
    IReadOnlyList<RunJson> Runs,
    IReadOnlyList<CutJson> Cuts,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<NotTogetherJson>? NotTogether,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<StartThatFitsJson>? StartsThatFit,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<ReachingJson>? Reaching,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<NoStartFitsJson>? NoStartFits,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<BeyondPumpJson>? BeyondPump);

internal sealed record BeyondPumpJson(string Controller, string Program, string Station, double Flow, double Capacity);

internal sealed record NoStartFitsJson(string Controller, string Program, bool LookedFor);

internal sealed record StartThatFitsJson(string Controller, string Program, string FirstStart, string InsteadOf);

internal sealed record ReachingJson(string Controller, string Program, string Starts, string From, string To, double? EarlierByMinutes, string Why, IReadOnlyList<string> Stations);

internal sealed record NotTogetherJson(string Group, string First, string Second, string Date, string From, string To);

internal sealed record CutJson(string Controller, string Program, double FromPercent, double ToPercent, double? ShortDepthMm, double? ShortMinutes, string? StartThatFits);

internal sealed record OverlapJson(string Controller, string First, string Second, string Date, double Minutes, double LargestPercent);

internal sealed record WindowJson(
    string Controller, string Program, string Date, string Finishes, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)] bool GrowIn);

internal sealed record PumpJson(string From, string To, double Flow, double Capacity);

internal sealed record RunJson(string Controller, string Program, string Date, string Begins, string Finishes);
