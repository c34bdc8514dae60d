using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>Boxes that somebody has to go and look at: after a power loss, and when the clocks are moved.</summary>
internal static class BoxCheckWords
{
    public static readonly Phrase PowerTitle = new("Verify these boxes: they lost power");

    /// <summary>On the round: a box that lost power is verified whether a dial of it is turned or not.</summary>
    public static Phrase AtRound(string box) => $"{box} lost power: verify clock, weekday, programs and percentage.";

    public static IReadOnlyList<ExceptionGroup> Of(SheetView view) => [.. Power(view), .. Clocks(view)];

    /// <summary>Boxes that lost power; empty or one group.</summary>
    public static IReadOnlyList<ExceptionGroup> Power(SheetView view)
    {
        var boxes = view.Sheet.BoxesToVerify;
        return boxes.Count == 0 ? [] :
        [
            new ExceptionGroup(
                PowerTitle,
                [
                    .. boxes.Select(b => Box(b, view)),
                    $"At each: clock and weekday, then minutes, starts and days of every program, then its percentage. When one is right: {Answers.Checked(boxes[0].Box.Controller, view.Issue.SiteId)}",
                    $"What did not run: {Answers.DidNotRunSpan(boxes[0].Box.Controller, view.Issue.SiteId)}",
                    ByHandWords.LockOut,
                ]),
        ];
    }

    private static Phrase Box(BoxToVerify box, SheetView view)
    {
        var power = box.Box;
        var back = power.Back is { } at ? $" to {When(at, power.BackHasHour, view)}" : Phrase.Empty;
        var since = power.SinceHasHour || power.Back is not null ? Phrase.Of($"from {When(power.Since, power.SinceHasHour, view)}") : $"at {When(power.Since, power.SinceHasHour, view)}";
        var note = power.Note.Length > 0 ? $" ({power.Note})" : "";
        return $"{view.BoxLabel(power.Controller)}: without power {since}{back}{note}. {Early(power, view)}By the logbook it should show {Phrase.Join(", ", box.Settings.Select(s => Phrase.Of($"{s.Program.Program} {SiteWords.Setting(s.Setting.Percent)}{Or(s.Program, view)}")))}.";
    }

    private static Phrase Or(ProgramKey program, SheetView view) => view.Sheet.Programs.FirstOrDefault(p => p.Key == program) is { } advice ? AdviceWords.OrAsked(advice) : Phrase.Empty;

    /// <summary>"01:10 today"; "some time today" where nobody gave the hour.</summary>
    private static Phrase When(DateTimeOffset instant, bool hasHour, SheetView view) =>
        hasHour ? view.Words.When(instant) : $"some time {view.Words.Day(view.Sheet.Site.Clock.DateOf(instant))}";

    private static Phrase Early(UnverifiedBox power, SheetView view) => power.CheckedEarly is { } early
        ? $"Checked {view.Words.When(early)}, before its power was back: that does not count. Check it again, or put the times right. "
        : Phrase.Empty;

    /// <summary>Boxes whose clock people move; empty or one group.</summary>
    public static IReadOnlyList<ExceptionGroup> Clocks(SheetView view)
    {
        if (view.Sheet.ClockChange is not { } change)
        {
            return [];
        }

        var isForward = change.By > TimeSpan.Zero;
        var way = new Phrase(isForward ? "forward" : "back");
        var by = SiteWords.Minutes(change.By.Duration().TotalMinutes);
        var from = view.Sheet.Site.Clock.ToLocal(change.At.AddMinutes(-1)).AddMinutes(1).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        var day = view.Words.Day(DateOnly.FromDateTime(view.Sheet.Site.Clock.ToLocal(change.At).DateTime));
        var late = new Phrase(isForward ? "later" : "earlier");
        return
        [
            new ExceptionGroup(
                change.IsAhead ? Phrase.Of($"Clocks go {way} {by} at {from} {day}") : $"Clocks went {way} {by} at {from} {day}",
                [
                    $"Move the clock of {Phrase.ListNames(change.Controllers.Select(view.BoxLabel))} {way} by {by}{(change.IsAhead ? new Phrase(" once they have") : Phrase.Empty)}; until then {(change.Controllers.Count == 1 ? new Phrase("it starts") : new Phrase("they start"))} {by} {late} by the site's clock.",
                    $"When one is right: {Answers.Checked(change.Controllers[0], view.Issue.SiteId)}",
                ]),
        ];
    }
}
