using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The round sheet's words.</summary>
internal static class RoundWords
{
    public static Phrase Title(SheetView view) => view.Sheet.SecondLook is { AfterRound: true }
        ? Phrase.Of($"Second round: what to change {By(view.Sheet.Site, afterRound: true)}")
        : $"Round: what to change today, {By(view.Sheet.Site, afterRound: false)}";

    /// <summary>By when a round is walked.</summary>
    public static Phrase By(Site site, bool afterRound) => afterRound ? new Phrase("before tonight's starts") : $"before {SiteWords.Clock(site.Report.RoundDoneBy)}";

    public static readonly Phrase NoAdvice = new("No sound advice: every dial as it is set.");
    public static readonly Phrase Nothing = new("No dial to turn today.");
    public static readonly Phrase StartsTitle = new("Starts and stations to take out, put back or key in");
    public static readonly Phrase StartsWithRound = new("Which, stands with the round.");
    public static readonly Phrase Found = new("dial shows");
    public static readonly Phrase Tick = new("tick when done");
    public static readonly Phrase OffNow = new("Off now, and this sheet cannot say when to turn them on");
    public static readonly Phrase RunningAsSet = new("Running as set");
    public static readonly Phrase WholeBox = new("one dial for the whole box");

    public static Phrase Lead(SheetView view)
    {
        var starts = view.StartBoxes.Count > 0 ? $" Starts or stations to take out, put back or key in at {Phrase.ListNames(view.StartBoxes)}: named after the round." : Phrase.Empty;
        return view switch
        {
            { Boxes.Count: > 0 } => $"{Boxes(view.Boxes.Count, view.Counts)}.{starts}",
            { NoAdvice: true } => NoAdvice + starts,
            _ => starts.IsEmpty ? new("No box to open today.") : Nothing + starts,
        };
    }

    /// <summary>"2. B6, under the oak".</summary>
    public static string Box(RoundBox box) => $"{SiteWords.Count(box.Order)}. {box.Controller}{(box.Place.Length > 0 ? ", " + box.Place : "")}";

    /// <summary>"B Tees 1-2", "A Greens + B Tees" where one dial turns both.</summary>
    public static string Programs(RoundLine line) =>
        string.Join(" + ", line.Programs.Select(p => p.Name.Length > 0 ? $"{p.Key.Program} {p.Name}" : p.Key.Program));

    /// <summary>"Open 4 boxes: skip 1 and change 6".</summary>
    public static Phrase Boxes(int boxes, RoundCounts counts) => $"Open {Phrase.Count(boxes, "box", "boxes")}: {Acts(counts)}";

    /// <summary>"skip 1, change 6 and turn on 1".</summary>
    public static Phrase Acts(RoundCounts counts)
    {
        var parts = new List<Phrase>();
        Add(parts, counts.Skip, count => $"skip {count}");
        Add(parts, counts.Change, count => $"change {count}");
        Add(parts, counts.TurnOn, count => $"turn on {count}");
        Add(parts, counts.SwitchOff, count => $"switch off {count}");
        return Phrase.List(parts);
    }

    /// <summary>What fell, in one line under the lead.</summary>
    public static Phrase RainLead(SheetView view) => view.Sheet.Overnight.Rain.Count == 0
        ? Phrase.Empty
        : $"Rain: {Phrase.Join("; ", view.Sheet.Overnight.Rain.Select(r => SectionWords.RainLine(r, view.Words)))}.";

    public static Phrase Foot(RoundCounts counts) =>
        $"Visit {SiteWords.Count(counts.Visit)}, leave {SiteWords.Count(counts.Leave)}, off {SiteWords.Count(counts.StaysOff)}"
        + (counts.AsSet > 0 ? $", as set {SiteWords.Count(counts.AsSet)}" : Phrase.Empty);

    public static Phrase FootExplained(RoundCounts counts) =>
        new Phrase("Visit: a dial to turn. Leave: do not touch. Off: is off and stays off.") + (counts.AsSet > 0 ? new Phrase(" As set: no advice, do not touch.") : Phrase.Empty);

    private static void Add(List<Phrase> parts, int count, Func<int, Phrase> said)
    {
        if (count > 0)
        {
            parts.Add(said(count));
        }
    }
}
