using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Reports.Words;

/// <summary>What is to be done at every box when the system is closed down or filled again. The steps are common practice.</summary>
internal static class SeasonWords
{
    /// <summary>Steps and cautions of a state; the cautions come first because they bind every step.</summary>
    private static readonly Dictionary<string, (string Title, string[] Lines)> Lists = new(StringComparer.Ordinal)
    {
        [SeasonState.Closing] = ("Close down, box by box",
        [
            LockOut,
            "Blowing out is for trained, licensed people where the law says so: air pressure below what the weakest pipe and head are made for, eye protection on, nobody near a head that is under air.",
            "Write down or photograph starts, days and minutes; turn every program off at the dial.",
            "Shut the supply; drain low points, or blow out one station at a time, the farthest first, short and twice rather than long.",
            "Open drains and isolation valves half way; take the battery out or leave the box powered as its maker says.",
        ]),
        [SeasonState.Closed] = ("Closed", [LockOut, "Every program off, supply shut."]),
        [SeasonState.Drained] = ("Drained", [LockOut, "Every program off, supply shut, drains open: nothing may be started, pumps run dry."]),
        [SeasonState.Charging] = ("Fill the pipes, box by box",
        [
            LockOut,
            "Fill slowly with the farthest and highest heads open until no air comes: fast water against air bursts pipes.",
            "Close drains, bring the pressure up in steps, walk the line for leaks.",
            "New battery, clock and weekday, starts, days, minutes and percentage against the door card; run each station.",
        ]),
    };

    private const string LockOut = "Lock out the electricity of pump and box before you open either.";

    public static IEnumerable<ExceptionGroup> Of(SheetView view)
    {
        foreach (var state in view.Sheet.Exceptions.Season.GroupBy(b => b.State, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var open = state.Where(b => b.CheckedOn is null).ToList();
            var done = state.Where(b => b.CheckedOn is not null).ToList();
            if (!Lists.TryGetValue(state.Key, out var list))
            {
                continue;
            }

            List<string> lines = open.Count > 0 ? [.. list.Lines, $"Not ticked off: {CommonWords.List([.. open.Select(b => view.BoxLabel(b.Controller))])}. When a box is done: {Answers.Checked(open[0].Controller, view.Issue.SiteId)}"] : [];
            if (done.Count > 0)
            {
                lines.Add($"Ticked off: {CommonWords.List([.. done.Select(b => $"{b.Controller} {view.Words.Day(b.CheckedOn!.Value)}{(b.CheckedBy.Length > 0 ? $" ({b.CheckedBy})" : "")}")])}.");
            }

            yield return new ExceptionGroup(list.Title, lines);
        }
    }
}
