using DailyAdjust.Core.Morning;

namespace DailyAdjust.Reports.Words;

/// <summary>Boxes that somebody has to go and look at: after a power loss, and when the clocks are moved.</summary>
internal static class BoxCheckWords
{
    private const string PowerTitle = "Verify these boxes: they lost power";

    public static IReadOnlyList<ExceptionGroup> Of(SheetView view) => [.. Power(view), .. Clocks(view)];

    private static IEnumerable<ExceptionGroup> Power(SheetView view)
    {
        var boxes = view.Sheet.BoxesToVerify;
        if (boxes.Count > 0)
        {
            yield return new ExceptionGroup(
                PowerTitle,
                [
                    .. boxes.Select(b => Box(b, view)),
                    $"At each: clock and weekday, then minutes, starts and days of every program, then its percentage. When one is right: {Answers.Checked(boxes[0].Box.Controller, view.Issue.SiteId)}",
                    $"What did not run: {Answers.DidNotRunSpan(boxes[0].Box.Controller, view.Issue.SiteId)}",
                    ByHandWords.LockOut,
                ]);
        }
    }

    private static string Box(BoxToVerify box, SheetView view)
    {
        var power = box.Box;
        var back = power.Back is { } at ? $" to {view.Words.When(at)}" : "";
        var note = power.Note.Length > 0 ? $" ({power.Note})" : "";
        return $"{view.BoxLabel(power.Controller)}: without power from {view.Words.When(power.Since)}{back}{note}. By the logbook it should show {string.Join(", ", box.Settings.Select(s => $"{s.Program.Program} {s.Setting}"))}.";
    }

    private static IEnumerable<ExceptionGroup> Clocks(SheetView view)
    {
        if (view.Sheet.ClockChange is not { } change)
        {
            yield break;
        }

        var way = change.By > TimeSpan.Zero ? "forward" : "back";
        var by = SiteWords.Minutes(change.By.Duration().TotalMinutes);
        var from = view.Sheet.Site.Clock.ToLocal(change.At.AddMinutes(-1)).AddMinutes(1).ToString("HH:mm", System.Globalization.CultureInfo.InvariantCulture);
        var day = view.Words.Day(DateOnly.FromDateTime(view.Sheet.Site.Clock.ToLocal(change.At).DateTime));
        var late = change.By > TimeSpan.Zero ? "later" : "earlier";
        yield return new ExceptionGroup(
            change.IsAhead ? $"Clocks go {way} {by} at {from} {day}" : $"Clocks went {way} {by} at {from} {day}",
            [
                $"Move the clock of {CommonWords.List([.. change.Controllers.Select(view.BoxLabel)])} {way} by {by}{(change.IsAhead ? " once they have" : "")}; until then {(change.Controllers.Count == 1 ? "it starts" : "they start")} {by} {late} by the site's clock.",
                $"When one is right: {Answers.Checked(change.Controllers[0], view.Issue.SiteId)}",
            ]);
    }
}
