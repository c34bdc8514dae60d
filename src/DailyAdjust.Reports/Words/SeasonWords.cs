using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>What is to be done at every box when the system is closed down or filled again. The steps are common practice.</summary>
internal static class SeasonWords
{
    private static readonly Phrase LockOut = new("Lock out the electricity of pump and box before you open either.");

    /// <summary>Steps and cautions of a state; the cautions come first because they bind every step.</summary>
    private static readonly Dictionary<string, (Phrase Title, Phrase[] Lines)> Lists = new(StringComparer.Ordinal)
    {
        [SeasonState.Closing] = (new("Close down, box by box"),
        [
            LockOut,
            new("Blowing out is for trained, licensed people where the law says so: air pressure below what the weakest pipe and head are made for, eye protection on, nobody near a head that is under air."),
            new("Write down or photograph starts, days and minutes; turn every program off at the dial."),
            new("Shut the supply; drain low points, or blow out one station at a time, the farthest first, short and twice rather than long."),
            new("Open drains and isolation valves half way; take the battery out or leave the box powered as its maker says."),
        ]),
        [SeasonState.Closed] = (new("Closed"), [LockOut, new("Every program off, supply shut.")]),
        [SeasonState.Drained] = (new("Drained"), [LockOut, new("Every program off, supply shut, drains open: nothing may be started, pumps run dry.")]),
        [SeasonState.Charging] = (new("Fill the pipes, box by box"),
        [
            LockOut,
            new("Fill slowly with the farthest and highest heads open until no air comes: fast water against air bursts pipes."),
            new("Close drains, bring the pressure up in steps, walk the line for leaks."),
            new("New battery, clock and weekday, starts, days, minutes and percentage against the door card; run each station."),
        ]),
    };

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

            List<Phrase> lines = open.Count > 0 ? [.. list.Lines, $"Not ticked off: {Phrase.ListNames(open.Select(b => view.BoxLabel(b.Controller)))}. When a box is done: {Answers.Checked(open[0].Controller, view.Issue.SiteId)}"] : [];
            if (done.Count > 0)
            {
                lines.Add($"Ticked off: {Phrase.List([.. done.Select(b => Phrase.Of($"{b.Controller} {view.Words.Day(b.CheckedOn!.Value)}{(b.CheckedBy.Length > 0 ? $" ({b.CheckedBy})" : "")}"))])}.");
            }

            yield return new ExceptionGroup(list.Title, lines);
        }
    }
}
