using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>One thing that is otherwise today, and what to do about it.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Lines">Each a sentence or a box to tick.</param>
internal sealed record ExceptionGroup(Phrase Title, IReadOnlyList<Phrase> Lines)
{
    /// <summary>Each line is something to do at a box beside the numbers of the round.</summary>
    public bool IsAct { get; init; }
}

/// <summary>What is otherwise today than on an ordinary day, in the order in which it presses.</summary>
internal static class ExceptionWords
{
    public static readonly Phrase Title = new("Today otherwise");

    public static IReadOnlyList<ExceptionGroup> Of(SheetView view) =>
    [
        .. HandRuns(view),
        .. BoxActWords.OutAndBack(view.BoxActs),
        .. Group(new("Taken out: did they stand still?"), view.Sheet.Exceptions.TakenOutRuns.GroupBy(r => (r.Program, r.At, r.Station is null)).Select(g => StoodStill([.. g], view))),
        .. Group(SettingWords.Title, SettingWords.NotUsed(view)),
        .. BoxActWords.GrowIns(view.BoxActs),
        .. Group(new("Off with a note: mended or over?"), view.Sheet.Programs.Where(p => p.Fault is not null).Select(p => Fault(p, view))),
        .. Group(new("Rain switch"), view.Sheet.Exceptions.Shut.SelectMany(s => Shut(s, view))),
        .. Group(new("Cold and wind"), view.Sheet.Exceptions.Night.Select(n => NightWords.Caution(n, view.Words))),
        .. Group(new("Drought stage"), view.Sheet.Exceptions.Stage is { } stage ? StageWords.Of(stage) : []),
        .. SeasonWords.Of(view),
    ];

    /// <summary>What an order for water by hand is about.</summary>
    public static Phrase ByHand(LogKind kind) => new(kind == LogKind.Flush ? "Flush salts down by hand" : "Water in by hand");

    private static IEnumerable<ExceptionGroup> Group(Phrase title, IEnumerable<Phrase> lines)
    {
        var all = lines.ToList();
        if (all.Count > 0)
        {
            yield return new ExceptionGroup(title, all);
        }
    }

    private static IEnumerable<ExceptionGroup> HandRuns(SheetView view)
    {
        foreach (var order in view.Sheet.Exceptions.HandRuns)
        {
            var why = Phrase.Join(", ", new[] { Phrase.Verbatim(order.Note), order.By.Length > 0 ? $"by {order.By}" : Phrase.Empty }.Where(t => !t.IsEmpty));
            var date = view.Sheet.Site.Clock.DateOf(order.Due.AddTicks(-1));
            var days = date > view.Sheet.Date ? $", {StandingWords.Left(date, view.Words)}" : Phrase.Empty;
            var from = order.Begins is { } begins ? $"from {view.Words.When(begins)}, " : Phrase.Empty;
            var isWholeDay = view.Sheet.Site.Clock.DayEnd(date) == order.Due;
            var by = isWholeDay ? $"the end of {view.Words.Day(date)}" : view.Words.When(order.Due);
            var due = !order.IsLate ? Phrase.Of($"{from}by {by}{days}")
                : isWholeDay ? Phrase.Of($"was due by {by} and is not all run by the logbook")
                : $"was due {by} and is not all run by the logbook";
            yield return new ExceptionGroup(
                $"{ByHand(order.Kind)}: {view.Words.DepthOf(order.DepthMm)} at {order.Where}, {due}{(why.IsEmpty ? Phrase.Empty : $" ({why})")}",
                [.. order.Against.Select(o => Phrase.Of($"Settle which goes first. {StandingWords.Order(o, view)}")), .. order.Rules.Select(RuleWords.First), .. order.Stations.Select(s => HandRun(s, order, view.Words))])
            { IsAct = true };
        }
    }

    private static Phrase HandRun(HandRunStation station, HandRunOrder order, SiteWords words)
    {
        var left = station.LeftMm < order.DepthMm - 0.05 ? $" ({words.DepthOf(station.LeftMm)} is left)" : Phrase.Empty;
        var runs = station.Cycles > 1
            ? $", as {SiteWords.Count(station.Cycles)} runs of at most {SiteWords.Minutes(station.CycleMinutes)}, {SiteWords.Minutes(station.SoakMinutes)} apart"
            : Phrase.Empty;
        return $"{ZoneWords.Named(station.Name, station.Station)}: {SiteWords.Minutes(station.Minutes)}{runs}{left}";
    }

    /// <summary>Stations of one start, or the start.</summary>
    private static Phrase StoodStill(IReadOnlyList<TakenOutRun> runs, SheetView view)
    {
        var (first, isOne) = (runs[0], runs.Count == 1);
        var stations = first.Station is null ? Phrase.Empty : $", {BoxActWords.Stations([.. runs.Select(r => r.Station!.Value.Station)])}";
        var line = DidNotRun(first, view);
        return isOne
            ? Phrase.Of($"{view.Label(first.Program)}, start of {view.Words.When(first.At)}{stations}: the numbers take it that it ran. If it was taken out, a line in logbook.csv: {line}")
            : $"{view.Label(first.Program)}, start of {view.Words.When(first.At)}{stations}: the numbers take it that they ran. If they were taken out, a line in logbook.csv for each: {line}";
    }

    private static Phrase DidNotRun(TakenOutRun run, SheetView view) =>
        Answers.DidNotRunLine(run.Station?.ToString() ?? run.Program.ToString(), run.Date, run.IsOneOfSeveral ? (run.At, run.Finishes) : null, view.Sheet.Site.Clock);

    private static Phrase Fault(ProgramAdvice program, SheetView view) =>
        $"{view.Label(program.Key)} is off since {view.Words.Day(view.Sheet.Site.Clock.DateOf(program.Fault!.Since))}: \"{program.Fault.Note}\"{(program.Fault.By.Length > 0 ? $" ({program.Fault.By})" : "")}. {(program.Advice == AdviceKind.Resume
            ? new Phrase("Turn it on only if that is mended or over.")
            : $"If that is mended or over: {Answers.Checked(program.Key.Controller, view.Issue.SiteId)}")}";

    private static IEnumerable<Phrase> Shut(ShutBox box, SheetView view)
    {
        yield return $"{box.Controller}: shut from {view.Words.When(box.Span.From)} until {view.Words.When(box.Span.Ends)} ({view.Words.DepthOf(box.Span.RainMm)} at gauge {box.Span.Gauge}).";
        foreach (var start in box.Starts)
        {
            yield return $"{view.Label(start.Program)}, start of {view.Words.When(start.At)}: taken not to have run. If it did: {Answers.Ran(start.Program, start.Date, view.Issue.SiteId)}";
        }
    }
}
