using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Sites;
using DailyAdjust.Reports.Words;
using static DailyAdjust.Reports.Json.JsonWriting;

namespace DailyAdjust.Reports.Json;

internal sealed record RunByHandJson(
    string? FirstPlay,
    IReadOnlyList<HandGroupJson> Groups,
    IReadOnlyList<HandBoxJson> NotBeforePlay,
    IReadOnlyList<HandStationJson> BeyondPump,
    IReadOnlyList<StationKeyJson> CanWait,
    IReadOnlyList<StationKeyJson> MustNotRun)
{
    /// <summary>Null = nothing of the night is to be made up for.</summary>
    public static RunByHandJson? Of(RunByHand? list, SiteClock clock) => list is null ? null : new(
        Local(list.FirstPlay, clock),
        [.. list.Groups.Select(g => new HandGroupJson(
            Local(g.From, clock), Local(g.To, clock), Number(g.FlowLPerMin), Number(g.CapacityLPerMin), [.. g.Boxes.Select(Box)]))],
        [.. list.NotBeforePlay.Select(Box)],
        [.. list.BeyondPump.Select(Station)],
        [.. list.CanWait.Select(s => new StationKeyJson(s.Controller, s.Station))],
        [.. list.MustNotRun.Select(s => new StationKeyJson(s.Controller, s.Station))]);

    private static HandBoxJson Box(HandBox box) => new(box.Controller, box.Program, box.Percent, [.. box.Stations.Select(Station)]);

    private static HandStationJson Station(MissedStation s) => new(
        s.Station.Controller, s.Station.Station, s.Area, Number(s.MissedMinutes), Number(s.RunMinutes), Number(s.Minutes));
}

internal sealed record HandGroupJson(string From, string To, double Flow, double? Capacity, IReadOnlyList<HandBoxJson> Boxes);

internal sealed record HandBoxJson(string Controller, string? Program, double? Percent, IReadOnlyList<HandStationJson> Stations);

internal sealed record HandStationJson(string Controller, string Station, string Area, double MissedMinutes, double RunMinutes, double Minutes);

internal sealed record StationKeyJson(string Controller, string Station);

internal sealed record BoxToVerifyJson(string Controller, string Since, string? Back, string Note, IReadOnlyList<BoxSettingJson> Settings, string? CheckedEarly)
{
    /// <summary>Null = none.</summary>
    public static IReadOnlyList<BoxToVerifyJson>? Of(IReadOnlyList<BoxToVerify> boxes, SiteClock clock) => boxes.Count == 0 ? null :
    [
        .. boxes.Select(b => new BoxToVerifyJson(
            b.Box.Controller,
            b.Box.SinceHasHour ? Local(b.Box.Since, clock) : CodeWords.Date(clock.DateOf(b.Box.Since)),
            b.Box.BackHasHour || b.Box.Back is null ? Local(b.Box.Back, clock) : CodeWords.Date(clock.DateOf(b.Box.Back.Value)),
            b.Box.Note,
            [.. b.Settings.Select(s => new BoxSettingJson(s.Program.Program, s.Setting.Percent))],
            Local(b.Box.CheckedEarly, clock))),
    ];
}

internal sealed record BoxSettingJson(string Program, double Setting);

internal sealed record ClockChangeJson(string At, double Minutes, bool Ahead, IReadOnlyList<string> Controllers)
{
    /// <summary>Null = none is near.</summary>
    public static ClockChangeJson? Of(ClockChange? change, SiteClock clock) =>
        change is null ? null : new(Local(change.At, clock), change.By.TotalMinutes, change.IsAhead, change.Controllers);
}
