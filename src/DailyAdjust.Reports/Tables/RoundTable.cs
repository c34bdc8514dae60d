using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Contracts;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>
/// round.csv: what to change today, then what waits for an answer. It comes back filled in, so a row's own sheet and
/// numbers are what "yes" means: an earlier round's row carries that round's date and its number.
/// </summary>
internal static class RoundTable
{
    public static Table Of(SheetView view)
    {
        var visits = view.Boxes.SelectMany(b => b.Lines).SelectMany(l => l.Programs).Select(p => TodayRow(view, p));
        var earlier = view.NotAnswered.Select(p => EarlierRow(view, p, p.Unanswered!));
        var unconfirmed = view.Sheet.Freshness.NeverConfirmed
            .Select(key => view.Sheet.Programs.FirstOrDefault(p => p.Key == key))
            .OfType<ProgramAdvice>()
            .Where(p => !p.NeedsVisit && p.Unanswered is null)
            .Select(p => ConfirmRow(view, p));
        return new Table(RoundColumns.All, [.. visits, .. earlier, .. unconfirmed]);
    }

    private static IReadOnlyList<Cell> TodayRow(SheetView view, ProgramAdvice advice) =>
        Row(view, advice, view.Id, advice.Advice, AdviceWords.NewPercent(advice), RoundActWords.Note(advice, view.Words).ToString(), advice.PauseDays);

    // With its issue wherever it is known: a bare date comes back from a spreadsheet as 7/15/2026.
    private static IReadOnlyList<Cell> EarlierRow(SheetView view, ProgramAdvice advice, UnansweredAdvice unanswered) =>
        Row(view, advice, unanswered.Issue is { } issue ? CodeWords.SheetId(unanswered.Sheet, issue) : CodeWords.Date(unanswered.Sheet), unanswered.Kind, unanswered.Percent ?? 0, AdviceWords.NotAnsweredAndNoted(advice).ToString(), unanswered.PauseDays);

    private static IReadOnlyList<Cell> ConfirmRow(SheetView view, ProgramAdvice advice) =>
        Row(view, advice, view.Id, advice.Advice, advice.Present.Percent, RoundCsvWords.Confirm);

    private static IReadOnlyList<Cell> Row(SheetView view, ProgramAdvice advice, string sheet, AdviceKind kind, double percent, string note, int? pauseDays = null) =>
    [
        Cell.Text(sheet),
        Cell.Text(advice.Key.Controller),
        Cell.Text(view.ControllerOf(advice.Key.Controller)?.Place),
        Cell.Text(advice.Key.Program),
        Cell.Text(advice.Name),
        Cell.Text(AdviceCode.Of(kind)),
        Cell.Short(advice.Present.Percent),
        Cell.Short(percent),
        Cell.Empty,
        Cell.Empty,
        Cell.Text(note),
        pauseDays is { } days ? Cell.Short(days) : Cell.Empty,
    ];
}
