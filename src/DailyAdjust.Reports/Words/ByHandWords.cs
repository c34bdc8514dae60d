using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>What to run by hand after a night that failed.</summary>
internal static class ByHandWords
{
    public static readonly Phrase Now = new("Run by hand now");
    private static readonly Phrase NothingNow = new("What did not run in the night");
    public static readonly Phrase LockOut = new("Lock out the electricity before you open a pump or a box; local codes and licensed practice come first.");

    public static Phrase Title(RunByHand list) => list.Groups.Count == 0 ? NothingNow : Now;

    /// <summary>How much there is, and whether it is done before play.</summary>
    public static Phrase Lead(RunByHand list, SheetView view)
    {
        if (list.Groups.Count == 0)
        {
            return new("There is nothing to start by hand now.");
        }

        var now = list.Groups.SelectMany(g => g.Boxes).Sum(b => b.Stations.Count);
        var all = now + list.NotBeforePlay.Sum(b => b.Stations.Count) + list.BeyondPump.Count;
        var play = list.FirstPlay is { } first
            ? $", first play {view.Words.Time(first)}"
            : new Phrase("; site.yaml does not say when play begins (report: first_play): stop before people are on the ground");
        return $"{Phrase.Count(all, "station", "stations")} did not get the night's water and cannot wait{(now < all ? $"; {SiteWords.Count(now)} of them can be run" : Phrase.Empty)}. Begun {view.Words.Time(list.Groups[0].From)}, done {view.Words.Time(list.Groups[^1].To)}{play}.";
    }

    /// <summary>Boxes that run at the same time; each line starts one box.</summary>
    public static IEnumerable<ExceptionGroup> Groups(RunByHand list, SheetView view) => list.Groups.Select(group => new ExceptionGroup(
        $"{view.Words.Time(group.From)} to {view.Words.Time(group.To)}: {Phrase.ListNames(group.Boxes.Select(b => b.Controller))}{(group.Boxes.Count > 1 ? new Phrase(" together") : Phrase.Empty)}{Flow(group, view.Words)}",
        [.. group.Boxes.Select(b => Box(b, view))]));

    /// <summary>What is not on the list, and why; then how it is booked.</summary>
    public static IReadOnlyList<Phrase> Rest(RunByHand list, SheetView view)
    {
        var lines = new List<Phrase>();
        Add(lines, list.NotBeforePlay.Count > 0, () => list.FirstPlay is null
            ? Phrase.Of($"Not now, because the pump or the box is busy, or a rule or an order is against it by then: {Phrase.Join("; ", list.NotBeforePlay.Select(b => Box(b, view)))}.")
            : $"Not done before play, or before a rule or an order is against it: {Phrase.Join("; ", list.NotBeforePlay.Select(b => Box(b, view)))}.");
        Add(lines, list.BeyondPump.Count > 0, () => $"More than the pump gives now: {string.Join(", ", list.BeyondPump.Select(s => $"{ZoneWords.Named(s.Name, s.Station)} {SiteWords.Minutes(s.Minutes)}"))}. Take the hose.");
        Add(lines, list.MustNotRun.Count > 0, () => $"Must not run now (an order, the season or a watering rule): {Stations(list.MustNotRun)}.");
        Add(lines, list.CanWait.Count > 0, () => $"Did not run either, but can wait for the next start: {Stations(list.CanWait)}.");
        Add(lines, list.Groups.Count > 0, () => $"When it has run: {Booking(list.Groups[0].Boxes[0], view.Issue.SiteId)}");
        Add(lines, list.Groups.Count > 0, () => LockOut);
        return lines;
    }

    private static void Add(List<Phrase> lines, bool isThere, Func<Phrase> line)
    {
        if (isThere)
        {
            lines.Add(line());
        }
    }

    private static Phrase Flow(HandGroup group, SiteWords words) => group.CapacityLPerMin is { } capacity ? $", {words.Flow(group.FlowLPerMin)} of the pump's {words.Flow(capacity)}" : Phrase.Empty;

    private static Phrase Box(HandBox box, SheetView view)
    {
        var where = view.BoxLabel(box.Controller);
        return box is { Program: { } program, Percent: { } percent }
            ? Phrase.Of($"{where}: start program {ProgramName(box.Controller, program, view)} at {SiteWords.Percent(percent)}, {SiteWords.Minutes(box.Stations.Sum(s => s.Minutes))} in all")
            : $"{where}: {string.Join(", ", box.Stations.Select(s => $"{ZoneWords.Named(s.Name, s.Station)} {SiteWords.Minutes(s.Minutes)}"))}";
    }

    private static string ProgramName(string controller, string program, SheetView view) => view.Label(new ProgramKey(controller, program));

    private static Phrase Booking(HandBox box, string siteId) => box is { Program: { } program, Percent: { } percent }
        ? Answers.RanByHand($"{box.Controller}/{program}", SiteWords.Percent(percent), siteId)
        : Answers.RanByHand(box.Stations[0].Station.ToString(), SiteWords.Minutes(box.Stations[0].Minutes), siteId);

    private static Phrase Stations(IReadOnlyList<StationKey> stations) =>
        Phrase.Join(", ", stations.GroupBy(s => s.Controller, StringComparer.Ordinal).Select(g => g.Count() == 1 ? Phrase.Of($"{g.Key} station {g.First().Station}") : $"{g.Key} stations {Phrase.ListNames(g.Select(s => s.Station))}"));
}
