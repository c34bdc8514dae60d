using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Reports.Json;

internal sealed record SettingNotUsedJson(string Controller, IReadOnlyList<string> Programs, string Time, double Percent, double Min, double Max)
{
    /// <summary>Null = none.</summary>
    public static IReadOnlyList<SettingNotUsedJson>? Of(IReadOnlyList<ImpossibleSetting> settings) => settings.Count == 0 ? null :
    [
        .. settings.Select(s => new SettingNotUsedJson(
            s.Controller.Id, [.. s.Programs.Select(p => p.Program)], JsonWriting.Time(s.Entry.Time), s.Entry.Value!.Value, s.Controller.PercentMin, s.Controller.PercentMax)),
    ];
}
