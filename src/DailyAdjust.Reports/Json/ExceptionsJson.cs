using System.Text.Json.Serialization;
using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

internal sealed record StandingJson(string Where, string What, string By, string? Begins, string? Until, int? DaysLeft);

internal sealed record TakenOutJson(string At, string Why, string? Until);

internal sealed record StationsOutJson(IReadOnlyList<string> Stations, string From, string Why, string? Until);

internal sealed record FaultJson(string Since, string Note, string By);

internal sealed record ExceptionsJson(
    IReadOnlyList<HandRunJson> HandRuns,
    IReadOnlyList<GrowInJson> GrowIns,
    IReadOnlyList<RainSwitchJson> RainSwitches,
    IReadOnlyList<SeasonJson> Season,
    StageJson? Stage,
    IReadOnlyList<NightCautionJson> Night,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<PutBackJson>? PutBack,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<TakenOutRunJson>? TakenOutRuns)
{
    public static ExceptionsJson Of(SheetExceptions e, SiteClock clock, DateOnly date) => new(
        [.. e.HandRuns.Select(o => new HandRunJson(
            KindWord.Of(o.Kind), o.Where.ToString(), Number(o.DepthMm), Local(o.Due, clock), o.IsLate, o.By, o.Note,
            [.. o.Stations.Select(s => new HandRunStationJson(
                s.Station.Controller, s.Station.Station, Number(s.LeftMm), s.Minutes, s.Cycles, s.CycleMinutes, s.SoakMinutes))],
            Local(o.Begins, clock), [.. o.Against.Select(a => StandingOf(a, clock, date))], o.Rules.Count == 0 ? null : [.. o.Rules.Select(r => r.Name)]))],
        [.. e.GrowIns.Select(g => new GrowInJson(
            g.Program.Controller, g.Program.Program, g.Day, g.Days, CodeWords.Date(g.Last), [.. g.Starts.Select(SiteWords.Clock)],
            [.. g.Minutes.SelectMany(m => m.Stations.Select(s => new GrowInMinutesJson(s.Station, m.Minutes)))], g.IsChange, g.IsOver, Local(g.Begins, clock),
            g.OutBeforeRound.Count == 0 ? null : TakenOut(g.OutBeforeRound, clock)))],
        [.. e.Shut.Select(s => new RainSwitchJson(
            s.Controller, Local(s.Span.From, clock), Local(s.Span.Ends, clock), s.Span.Gauge, Number(s.Span.RainMm),
            [.. s.Starts.Select(start => new ShutStartJson(start.Program.Controller, start.Program.Program, Local(start.At, clock)))]))],
        [.. e.Season.Select(s => new SeasonJson(s.Controller, s.State, Local(s.Since, clock), Date(s.CheckedOn), s.CheckedBy))],
        e.Stage is { } stage
            ? new StageJson(
                stage.Stage.Name, CodeWords.Date(stage.Stage.First), Date(stage.Stage.Last), stage.Described is not null, stage.Described?.MostPercent,
                [.. stage.Ceilings.Select(c => new CeilingJson(c.Area, Number(c.Percent)))])
            : null,
        [.. e.Night.Select(n => new NightCautionJson(
            n.Reason == OffReason.Cold ? "cold" : "wind", Number(n.Value), Number(n.Limit), n.IsForecast, n.Holds))],
        e.PutBack.Count == 0 ? null : [.. e.PutBack.Select(b => new PutBackJson(
            b.Program.Controller, b.Program.Program, [.. b.Stations.Select(s => s.Station)], [.. b.Starts.Select(SiteWords.Clock)], b.Why.ToString(), Until(b.Until)))],
        e.TakenOutRuns.Count == 0 ? null : [.. e.TakenOutRuns.Select(r => new TakenOutRunJson(
            r.Program.Controller, r.Program.Program, r.Station?.Station, CodeWords.Date(r.Date), Local(r.At, clock)))]);

    public static IReadOnlyList<StandingJson> Standing(MorningSheet sheet) => [.. sheet.StandingOrders.Select(o => StandingOf(o, sheet.Site.Clock, sheet.Date))];

    private static StandingJson StandingOf(StandingOrder o, SiteClock clock, DateOnly date) => new(
        o.Where, o.What.ToString(), o.By, Local(o.Begins, clock), Until(o.Until is { } day ? new LogTime(day, o.UntilClock) : null), o.Until?.DayNumber - date.DayNumber);

    public static IReadOnlyList<TakenOutJson> TakenOut(ProgramAdvice p, SiteClock clock) => TakenOut(p.TakenOut, clock);

    private static IReadOnlyList<TakenOutJson> TakenOut(IReadOnlyList<TakenOutStart> starts, SiteClock clock) =>
        [.. starts.Select(t => new TakenOutJson(Local(t.At, clock), t.Why.ToString(), Until(t.Until)))];

    public static IReadOnlyList<StationsOutJson> StationsOut(ProgramAdvice p, SiteClock clock) =>
        [.. p.StationsOut.Select(o => new StationsOutJson([.. o.Stations.Select(s => s.Station)], Local(o.From, clock), o.Why.ToString(), Until(o.Until)))];

    public static FaultJson? Fault(ProgramAdvice p, SiteClock clock) => p.Fault is { } fault ? new FaultJson(Local(fault.Since, clock), fault.Note, fault.By) : null;

    /// <summary>A bare date: through that date.</summary>
    private static string? Until(LogTime? time) => time is { } t ? Time(t) : null;
}

internal sealed record HandRunJson(
    string Kind, string Where, double DepthMm, string Due, bool Late, string By, string Note, IReadOnlyList<HandRunStationJson> Stations, string? Begins,
    IReadOnlyList<StandingJson> Against, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<string>? Rules);

internal sealed record HandRunStationJson(string Controller, string Station, double LeftMm, double Minutes, int Cycles, double CycleMinutes, double SoakMinutes);

internal sealed record GrowInJson(
    string Controller, string Program, int Day, int Days, string Last, IReadOnlyList<string> Starts, IReadOnlyList<GrowInMinutesJson> Minutes, bool Change, bool Over,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Begins,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] IReadOnlyList<TakenOutJson>? OutBeforeRound);

internal sealed record GrowInMinutesJson(string Station, double Minutes);

internal sealed record RainSwitchJson(string Controller, string From, string Ends, string Gauge, double RainMm, IReadOnlyList<ShutStartJson> Starts);

internal sealed record ShutStartJson(string Controller, string Program, string At);

internal sealed record SeasonJson(string Controller, string State, string? Since, string? CheckedOn, string CheckedBy);

internal sealed record StageJson(string Name, string First, string? Last, bool Known, double? MostPercent, IReadOnlyList<CeilingJson> Ceilings);

internal sealed record CeilingJson(string Area, double Percent);

internal sealed record PutBackJson(string Controller, string Program, IReadOnlyList<string> Stations, IReadOnlyList<string> Starts, string Why, string? Until);

/// <summary>Station: null = the whole start.</summary>
internal sealed record TakenOutRunJson(
    string Controller, string Program, [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] string? Station, string Date, string At);

/// <summary>Value and limit: °C for cold, m/s for wind.</summary>
internal sealed record NightCautionJson(string Kind, double Value, double Limit, bool Forecast, bool Holds);
