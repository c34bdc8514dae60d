using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>What a hand does at a box beside its dials: starts and stations to take out, to put back and to key in.</summary>
internal static class BoxActWords
{
    /// <summary>All of it, a line each.</summary>
    public static IReadOnlyList<ExceptionGroup> Of(BoxActs acts) => [.. OutAndBack(acts), .. GrowIns(acts)];

    public static IEnumerable<ExceptionGroup> OutAndBack(BoxActs acts) =>
    [
        .. Group(new("Starts and stations to take out"), TakenOut(acts)),
        .. Group(new("Put back"), acts.Exceptions.PutBack.Select(p => PutBack(p, acts))),
    ];

    public static IEnumerable<ExceptionGroup> GrowIns(BoxActs acts) => Group(new("Grow-in"), acts.Exceptions.GrowIns.SelectMany(g => GrowIn(g, acts)));

    private static IEnumerable<ExceptionGroup> Group(Phrase title, IEnumerable<Phrase> lines)
    {
        var all = lines.ToList();
        if (all.Count > 0)
        {
            yield return new ExceptionGroup(title, all) { IsAct = true };
        }
    }

    private static IEnumerable<Phrase> TakenOut(BoxActs acts)
    {
        var keyedIn = acts.Exceptions.GrowIns.Where(g => g.IsKeyedIn).Select(g => g.Program).ToHashSet();
        foreach (var program in acts.Programs)
        {
            foreach (var start in program.TakenOut.Where(_ => !keyedIn.Contains(program.Key)))
            {
                yield return $"{acts.Label(program.Key)}: take out the start of {acts.Words.When(start.At)}. It must not run: {FreshnessWords.Sentence(start.Why)}{Until(start.Until, acts.Words)}";
            }

            foreach (var out_ in program.StationsOut)
            {
                yield return $"{acts.Label(program.Key)}: take out {Stations([.. out_.Stations.Select(s => s.Station)])}, from {acts.Words.When(out_.From)} on. {FreshnessWords.Sentence(out_.Why.Shaped(SiteWords.Capital))}{Until(out_.Until, acts.Words)} The next sheet asks whether that was done.";
            }
        }
    }

    /// <summary>Nobody knows whether they were taken out: where they were not, there is nothing to put back.</summary>
    private static Phrase PutBack(PutBack back, BoxActs acts)
    {
        var what = back.Stations.Count > 0
            ? Stations([.. back.Stations.Select(s => s.Station)])
            : back.Starts.Count == 1 ? Phrase.Of($"the start of {SiteWords.Clock(back.Starts[0])}")
            : $"the starts of {Phrase.ListNames(back.Starts.Select(SiteWords.Clock))}";
        var ended = back.Until is not { } end ? new Phrase("does not hold before the next visit")
            : end.Instant(acts.Words.SiteClock) <= acts.AsOf ? Phrase.Of($"ended {End(end, acts)}")
            : $"ends {End(end, acts)}";
        var isOne = back.Stations.Count + back.Starts.Count == 1;
        var why = FreshnessWords.Sentence(back.Why);
        return isOne
            ? Phrase.Of($"{acts.Label(back.Program)}: put back {what}, if it was taken out. What kept it from running {ended}: {why}")
            : $"{acts.Label(back.Program)}: put back {what}, if they were taken out. What kept them from running {ended}: {why}";
    }

    private static Phrase End(LogTime end, BoxActs acts) => end.Clock is { } clock
        ? Phrase.Of($"at {SiteWords.Clock(clock)} {acts.Words.Day(end.Date)}")
        : $"with {(end.Date == acts.Words.SheetDate ? acts.Words.Day(end.Date) : SiteWords.Date(end.Date))}";

    /// <summary>"station 3", "stations 3 and 4".</summary>
    public static Phrase Stations(IReadOnlyList<string> stations) =>
        stations.Count == 1 ? Phrase.Of($"station {stations[0]}") : $"stations {Phrase.ListNames(stations)}";

    private static IEnumerable<Phrase> GrowIn(GrowInLine line, BoxActs acts)
    {
        var starts = string.Join(' ', line.Starts.Select(SiteWords.Clock));
        if (line.IsOver)
        {
            yield return $"{acts.Label(line.Program)}: grow-in is over. Key in its own starts ({starts}), days and minutes, as on its door card.";
        }
        else if (line.IsKeyedIn)
        {
            var minutes = line.Minutes.Count == 1
                ? Phrase.Verbatim(SiteWords.Minutes(line.Minutes[0].Minutes))
                : Phrase.Join(", ", line.Minutes.Select(m => Phrase.Of($"{SiteWords.Minutes(m.Minutes)} on {Phrase.ListNames(m.Stations.Select(s => s.Station))}")));
            var from = line.Begins is { } begins ? $", from {acts.Words.When(begins)} on" : Phrase.Empty;
            yield return $"{acts.Label(line.Program)}, day {SiteWords.Count(line.Day)} of {SiteWords.Count(line.Days)}: {NotNow(line.Program, acts)}key in {Phrase.Count(line.Starts.Count, "start", "starts")} ({starts}) x {minutes}, every day{from}.{LeftOut(line, acts)}";
        }
    }

    /// <summary>A program that must not run is not keyed in and left on.</summary>
    private static Phrase NotNow(ProgramKey program, BoxActs acts) =>
        acts.Programs.Any(p => p.Key == program && p.Advice == AdviceKind.Off) ? new("it must not run now, see the round. Once it may run, and not before, ") : Phrase.Empty;

    /// <summary>Starts of it that an order or a watering rule forbids, until the next visit.</summary>
    private static Phrase LeftOut(GrowInLine line, BoxActs acts) => Phrase.Concat(line.OutBeforeRound.Concat(acts.Programs.Where(p => p.Key == line.Program).SelectMany(p => p.TakenOut))
        .GroupBy(t => (Date: acts.Words.SiteClock.DateOf(t.At), t.Why, t.Until))
        .Select(g => Phrase.Of($" Leave out {Phrase.ListNames(g.Select(t => acts.Words.Time(t.At)))} on {SiteWords.Date(g.Key.Date)}: {FreshnessWords.Sentence(g.Key.Why)}{Until(g.Key.Until, acts.Words)}")));

    private static Phrase Until(LogTime? until, SiteWords words) => until is { } end ? $" {StandingWords.Ends(end.Date, end.Clock, words)}." : Phrase.Empty;
}
