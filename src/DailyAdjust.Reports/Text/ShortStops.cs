using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>When to switch the round's programs off after rain, where not every change has a line for it; no pieces where none has such a rule.</summary>
internal static class ShortStops
{
    /// <summary>"Switch off after rain:" "B1/B with 0.26 in at range before 22:15 today;", programs of one rule together.</summary>
    public static IReadOnlyList<Phrase> Together(SheetView view)
    {
        var rules = Ruled(view)
            .GroupBy(x => AdviceWords.StopShort(x.Line.First.StopRule!, view.Words))
            .Select(g => Phrase.Of($"{string.Join(", ", g.Select(x => $"{x.Box.Controller}/{string.Join("+", x.Line.Programs.Select(p => p.Key.Program))}"))} {g.Key}"))
            .ToList();
        return rules.Count == 0 ? [] : [Then, .. rules.Select((rule, i) => Phrase.Of($"{rule}{(i < rules.Count - 1 ? ";" : ".")}"))];
    }

    /// <summary>One line that says how many there are.</summary>
    public static IReadOnlyList<Phrase> Counted(SheetView view) => Count(view) is { } count ? [$"{When}: {count}, see {ReportFiles.Html}."] : [];

    /// <summary>The same among what is left to the page.</summary>
    public static IReadOnlyList<Phrase> Title(SheetView view) => Count(view) is { } count ? [$"{When} ({count})"] : [];

    private static readonly Phrase Then = new("Switch off after rain:");
    private static readonly Phrase When = new("When to switch off after rain");

    /// <summary>"6 programs"; null = none.</summary>
    private static Phrase? Count(SheetView view) => Ruled(view).Sum(x => x.Line.Programs.Count) is > 0 and var count ? Phrase.Count(count, "program", "programs") : null;

    private static IEnumerable<(RoundBox Box, RoundLine Line)> Ruled(SheetView view) => view.Boxes.SelectMany(box => box.Lines.Where(l => l.First.StopRule is not null).Select(line => (box, line)));
}
