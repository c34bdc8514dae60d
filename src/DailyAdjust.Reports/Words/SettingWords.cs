using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Settings in the logbook that no dial can show: asked about, not used.</summary>
internal static class SettingWords
{
    public static readonly Phrase Title = new("Setting not used");

    /// <summary>A line for each dial that has to be read, with the command that settles it.</summary>
    public static IEnumerable<Phrase> NotUsed(SheetView view)
    {
        foreach (var setting in view.Sheet.SettingsNotUsed)
        {
            var (time, by) = (setting.Entry.Time, setting.Entry.By);
            Phrase when = $"{(time.Clock is { } clock ? SiteWords.Clock(clock) + " " : "")}{view.Words.Day(time.Date)}{(by.Length > 0 ? $", {by}" : "")}";
            foreach (var (programs, answer) in Dials(setting, view.Issue.SiteId))
            {
                yield return $"{Phrase.ListNames(programs.Select(view.Label))}: setting {SiteWords.Percent(setting.Entry.Value!.Value)} ({when}) is beyond what the box can do"
                    + $" ({Tables.Plain.Short(setting.Controller.PercentMin)}-{SiteWords.Percent(setting.Controller.PercentMax)}): not used. Read the dial, then: {answer}";
            }
        }
    }

    /// <summary>One dial for the whole box is set for the box; else every program has its own.</summary>
    private static IEnumerable<(IReadOnlyList<ProgramKey> Programs, Phrase Answer)> Dials(ImpossibleSetting setting, string siteId) =>
        setting.Controller.Applies == PercentApplies.Controller
            ? [(setting.Programs, Answers.Setting(setting.Controller.Id, siteId))]
            : setting.Programs.Select(p => ((IReadOnlyList<ProgramKey>)[p], Answers.Setting(p, siteId)));
}
