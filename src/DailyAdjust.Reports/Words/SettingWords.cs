namespace DailyAdjust.Reports.Words;

/// <summary>Settings in the logbook that no dial can show: asked about, not used.</summary>
internal static class SettingWords
{
    public const string Title = "Setting not used";

    public static IEnumerable<string> NotUsed(SheetView view)
    {
        foreach (var setting in view.Sheet.SettingsNotUsed)
        {
            var (time, by) = (setting.Entry.Time, setting.Entry.By);
            var when = $"{(time.Clock is { } clock ? SiteWords.Clock(clock) + " " : "")}{view.Words.Day(time.Date)}{(by.Length > 0 ? $", {by}" : "")}";
            yield return $"{CommonWords.List([.. setting.Programs.Select(view.Label)])}: setting {SiteWords.Percent(setting.Entry.Value!.Value)} ({when}) is beyond what the box can do"
                + $" ({Tables.Plain.Short(setting.Controller.PercentMin)}-{SiteWords.Percent(setting.Controller.PercentMax)}): not used. Read the dial, then: {Answers.Setting(setting.Programs[0], view.Issue.SiteId)}";
        }
    }
}
