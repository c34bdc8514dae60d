using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

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
        .. Group(new("Starts and stations to take out"), TakenOut(view), isAct: true),
        .. Group(new("Put back"), view.Sheet.Exceptions.PutBack.Select(p => PutBack(p, view)), isAct: true),
        .. Group(new("Taken out: did they stand still?"), view.Sheet.Exceptions.TakenOutRuns.GroupBy(r => (r.Program, r.At, r.Station is null)).Select(g => StoodStill([.. g], view))),
        .. Group(SettingWords.Title, SettingWords.NotUsed(view)),
        .. Group(new("Grow-in"), view.Sheet.Exceptions.GrowIns.SelectMany(g => GrowIn(g, view)), isAct: true),
        .. Group(new("Off with a note: mended or over?"), view.Sheet.Programs.Where(p => p.Fault is not null).Select(p => Fault(p, view))),
        .. Group(new("Rain switch"), view.Sheet.Exceptions.Shut.SelectMany(s => Shut(s, view))),
        .. Group(new("Cold and wind"), view.Sheet.Exceptions.Night.Select(n => NightWords.Caution(n, view.Words))),
        .. Group(new("Drought stage"), view.Sheet.Exceptions.Stage is { } stage ? StageWords.Of(stage) : []),
        .. SeasonWords.Of(view),
    ];

    /// <summary>What an order for water by hand is about.</summary>
    public static Phrase ByHand(LogKind kind) => new(kind == LogKind.Flush ? "Flush salts down by hand" : "Water in by hand");

    private static IEnumerable<ExceptionGroup> Group(Phrase title, IEnumerable<Phrase> lines, bool isAct = false)
    {
        var all = lines.ToList();
        if (all.Count > 0)
        {
            yield return new ExceptionGroup(title, all) { IsAct = isAct };
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

    private static IEnumerable<Phrase> TakenOut(SheetView view)
    {
        var keyedIn = view.Sheet.Exceptions.GrowIns.Where(g => g.IsKeyedIn).Select(g => g.Program).ToHashSet();
        foreach (var program in view.Sheet.Programs)
        {
            foreach (var start in program.TakenOut.Where(_ => !keyedIn.Contains(program.Key)))
            {
                yield return $"{view.Label(program.Key)}: take out the start of {view.Words.When(start.At)}. It must not run: {FreshnessWords.Sentence(start.Why)}{Until(start.Until, view.Words)}";
            }

            foreach (var out_ in program.StationsOut)
            {
                yield return $"{view.Label(program.Key)}: take out {Stations([.. out_.Stations.Select(s => s.Station)])}, from {view.Words.When(out_.From)} on. {FreshnessWords.Sentence(out_.Why.Shaped(SiteWords.Capital))}{Until(out_.Until, view.Words)} The next sheet asks whether that was done.";
            }
        }
    }

    /// <summary>Nobody knows whether they were taken out: where they were not, there is nothing to put back.</summary>
    private static Phrase PutBack(PutBack back, SheetView view)
    {
        var what = back.Stations.Count > 0
            ? Stations([.. back.Stations.Select(s => s.Station)])
            : back.Starts.Count == 1 ? Phrase.Of($"the start of {SiteWords.Clock(back.Starts[0])}")
            : $"the starts of {Phrase.ListNames(back.Starts.Select(SiteWords.Clock))}";
        var ended = back.Until is not { } end ? new Phrase("does not hold before the next visit")
            : end.Instant(view.Sheet.Site.Clock) <= view.Sheet.AsOf ? Phrase.Of($"ended {End(end, view)}")
            : $"ends {End(end, view)}";
        var isOne = back.Stations.Count + back.Starts.Count == 1;
        var why = FreshnessWords.Sentence(back.Why);
        return isOne
            ? Phrase.Of($"{view.Label(back.Program)}: put back {what}, if it was taken out. What kept it from running {ended}: {why}")
            : $"{view.Label(back.Program)}: put back {what}, if they were taken out. What kept them from running {ended}: {why}";
    }

    private static Phrase End(LogTime end, SheetView view) => end.Clock is { } clock
        ? Phrase.Of($"at {SiteWords.Clock(clock)} {view.Words.Day(end.Date)}")
        : $"with {(end.Date == view.Sheet.Date ? view.Words.Day(end.Date) : SiteWords.Date(end.Date))}";

    /// <summary>"station 3", "stations 3 and 4".</summary>
    private static Phrase Stations(IReadOnlyList<string> stations) =>
        stations.Count == 1 ? Phrase.Of($"station {stations[0]}") : $"stations {Phrase.ListNames(stations)}";

    /// <summary>Stations of one start, or the start.</summary>
    private static Phrase StoodStill(IReadOnlyList<TakenOutRun> runs, SheetView view)
    {
        var (first, isOne) = (runs[0], runs.Count == 1);
        var stations = first.Station is null ? Phrase.Empty : $", {Stations([.. runs.Select(r => r.Station!.Value.Station)])}";
        var line = DidNotRun(first, view);
        return isOne
            ? Phrase.Of($"{view.Label(first.Program)}, start of {view.Words.When(first.At)}{stations}: the numbers take it that it ran. If it was taken out, a line in logbook.csv: {line}")
            : $"{view.Label(first.Program)}, start of {view.Words.When(first.At)}{stations}: the numbers take it that they ran. If they were taken out, a line in logbook.csv for each: {line}";
    }

    private static Phrase DidNotRun(TakenOutRun run, SheetView view) =>
        Answers.DidNotRunLine(run.Station?.ToString() ?? run.Program.ToString(), run.Date, run.IsOneOfSeveral ? (run.At, run.Finishes) : null, view.Sheet.Site.Clock);

    private static IEnumerable<Phrase> GrowIn(GrowInLine line, SheetView view)
    {
        var starts = string.Join(' ', line.Starts.Select(SiteWords.Clock));
        if (line.IsOver)
        {
            yield return $"{view.Label(line.Program)}: grow-in is over. Key in its own starts ({starts}), days and minutes, as on its door card.";
        }
        else if (line.IsKeyedIn)
        {
            var minutes = line.Minutes.Count == 1
                ? Phrase.Verbatim(SiteWords.Minutes(line.Minutes[0].Minutes))
                : Phrase.Join(", ", line.Minutes.Select(m => Phrase.Of($"{SiteWords.Minutes(m.Minutes)} on {Phrase.ListNames(m.Stations.Select(s => s.Station))}")));
            var from = line.Begins is { } begins ? $", from {view.Words.When(begins)} on" : Phrase.Empty;
            yield return $"{view.Label(line.Program)}, day {SiteWords.Count(line.Day)} of {SiteWords.Count(line.Days)}: {NotNow(line.Program, view)}key in {Phrase.Count(line.Starts.Count, "start", "starts")} ({starts}) x {minutes}, every day{from}.{LeftOut(line, view)}";
        }
    }

    /// <summary>A program that must not run is not keyed in and left on.</summary>
    private static Phrase NotNow(ProgramKey program, SheetView view) =>
        view.Sheet.Programs.Any(p => p.Key == program && p.Advice == AdviceKind.Off) ? new("it must not run now, see the round. Once it may run, and not before, ") : Phrase.Empty;


    /// <summary>Starts of it that an order or a watering rule forbids, until the next visit.</summary>
    private static Phrase LeftOut(GrowInLine line, SheetView view) => Phrase.Concat(line.OutBeforeRound.Concat(view.Sheet.Programs.Where(p => p.Key == line.Program).SelectMany(p => p.TakenOut))
        .GroupBy(t => (Date: view.Sheet.Site.Clock.DateOf(t.At), t.Why, t.Until))
        .Select(g => Phrase.Of($" Leave out {Phrase.ListNames(g.Select(t => view.Words.Time(t.At)))} on {SiteWords.Date(g.Key.Date)}: {FreshnessWords.Sentence(g.Key.Why)}{Until(g.Key.Until, view.Words)}")));

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

    private static Phrase Until(LogTime? until, SiteWords words) => until is { } end ? $" {StandingWords.Ends(end.Date, end.Clock, words)}." : Phrase.Empty;
}
