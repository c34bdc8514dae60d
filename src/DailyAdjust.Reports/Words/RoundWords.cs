using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>The round sheet's words.</summary>
internal static class RoundWords
{
    public static string Title(SheetView view) => view.Sheet.SecondLook is { AfterRound: true }
        ? $"Second round: what to change {By(view.Sheet.Site, afterRound: true)}"
        : $"Round: what to change today, {By(view.Sheet.Site, afterRound: false)}";

    /// <summary>By when a round is walked.</summary>
    public static string By(Site site, bool afterRound) => afterRound ? "before tonight's starts" : $"before {SiteWords.Clock(site.Report.RoundDoneBy)}";

    public const string NoAdvice = "No sound advice: every dial as it is set.";
    public const string Nothing = "No dial to turn today.";
    public const string StartsTitle = "Starts and stations to take out, put back or key in";
    public const string StartsOnSheet = "Which, stands on the sheet.";
    public const string Found = "dial shows";
    public const string Tick = "tick when done";
    public const string OffNow = "Off now, and this sheet cannot say when to turn them on";
    public const string RunningAsSet = "Running as set";
    public const string WholeBox = "one dial for the whole box";

    public static string Lead(SheetView view)
    {
        var starts = view.StartBoxes.Count > 0 ? $" Starts or stations to take out, put back or key in at {CommonWords.List([.. view.StartBoxes])}: named after the round." : "";
        return view switch
        {
            { Boxes.Count: > 0 } => $"{Boxes(view.Boxes.Count, view.Counts)}.{starts}",
            { NoAdvice: true } => NoAdvice + starts,
            _ => starts.Length > 0 ? Nothing + starts : "No box to open today.",
        };
    }

    /// <summary>"Open 4 boxes: skip 1 and change 6".</summary>
    public static string Boxes(int boxes, RoundCounts counts) => $"Open {CommonWords.Count(boxes, "box", "boxes")}: {Acts(counts)}";

    /// <summary>"skip 1, change 6 and turn on 1".</summary>
    public static string Acts(RoundCounts counts)
    {
        var parts = new List<string>();
        Add(parts, "skip", counts.Skip);
        Add(parts, "change", counts.Change);
        Add(parts, "turn on", counts.TurnOn);
        Add(parts, "switch off", counts.SwitchOff);
        return CommonWords.List(parts);
    }

    /// <summary>What fell, in one line under the lead.</summary>
    public static string RainLead(SheetView view) => view.Sheet.Overnight.Rain.Count == 0
        ? ""
        : "Rain: " + string.Join("; ", view.Sheet.Overnight.Rain.Select(r => SectionWords.RainLine(r, view.Words))) + ".";

    public static string Foot(RoundCounts counts) =>
        $"Visit {SiteWords.Count(counts.Visit)}, leave {SiteWords.Count(counts.Leave)}, off {SiteWords.Count(counts.StaysOff)}"
        + (counts.AsSet > 0 ? $", as set {SiteWords.Count(counts.AsSet)}" : "");

    public static string FootExplained(RoundCounts counts) =>
        "Visit: a dial to turn. Leave: do not touch. Off: is off and stays off." + (counts.AsSet > 0 ? " As set: no advice, do not touch." : "");

    private static void Add(List<string> parts, string act, int count)
    {
        if (count > 0)
        {
            parts.Add($"{act} {SiteWords.Count(count)}");
        }
    }
}
