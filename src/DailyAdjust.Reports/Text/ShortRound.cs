using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>One way to say the round.</summary>
/// <param name="Lines">With its title and foot.</param>
/// <param name="IsBeforeKnown">What is only to be ticked or known gives way to it.</param>
internal sealed record ShortRoundForm(IReadOnlyList<string> Lines, bool IsBeforeKnown)
{
    /// <summary>To be named at the end as left to the page.</summary>
    public IReadOnlyList<Phrase> LeftOut { get; init; } = [];
}

/// <summary>
/// The round in ever fewer lines. No form loses a change, nor what the hand does about it: reasons and quoted notes go first, then what is to be known beside the round,
/// and last when to switch off after rain, which is counted then.
/// </summary>
internal static class ShortRound
{
    /// <summary>From the most to the least said; the last is as short as it gets.</summary>
    public static IEnumerable<ShortRoundForm> Forms(SheetView view)
    {
        yield return Of(view, lines => Boxes(lines, view, reasonLines: 1, withStop: true), isBeforeKnown: false);
        yield return Of(view, lines => Boxes(lines, view, reasonLines: 0, withStop: true), isBeforeKnown: false);
        yield return Of(view, lines => BoxesAndStops(lines, view, reasonLines: 1), isBeforeKnown: false);
        yield return Of(view, lines => BoxesAndStops(lines, view, reasonLines: 0), isBeforeKnown: false);
        yield return Of(view, lines => BoxesAndStops(lines, view, reasonLines: null), isBeforeKnown: false);
        yield return Of(view, lines => BoxesAndStops(lines, view, reasonLines: null), isBeforeKnown: true);
        yield return Of(view, lines => BoxToALine(lines, view, ShortStops.Together(view)), isBeforeKnown: true);
        yield return Of(view, lines => BoxToALine(lines, view, ShortStops.Counted(view)), isBeforeKnown: true);
        yield return Of(view, lines => AllInARow(lines, view), isBeforeKnown: true) with { LeftOut = ShortStops.Title(view) };
    }

    private static ShortRoundForm Of(SheetView view, Action<TextLines> changes, bool isBeforeKnown)
    {
        var lines = new TextLines(view.Language);
        lines.Add(RoundWords.Title(view).Shaped(title => title.ToUpperInvariant()));
        changes(lines);
        if (view.Boxes.Count == 0)
        {
            lines.Add(RoundWords.Nothing);
        }

        lines.Add(RoundWords.Foot(view.Counts));
        return new ShortRoundForm(lines.All, isBeforeKnown);
    }

    /// <summary>A line or more for every change: what to do and on what condition, why as far as the line goes, what else to key in, and when to switch it off.</summary>
    /// <param name="reasonLines">So many lines more a reason may take than what to do takes; a skip's first words always stand. Null = nor are notes quoted.</param>
    private static void Boxes(TextLines lines, SheetView view, int? reasonLines, bool withStop)
    {
        foreach (var box in view.Boxes)
        {
            lines.Add(RoundWords.Box(box), most: 1);
            foreach (var line in box.Lines)
            {
                var advice = line.First;
                Phrase act = $"[ ] {RoundWords.Programs(line)}: {AdviceWords.ActAndNumbers(advice)}{(reasonLines is null ? RoundActWords.IfMended(advice) : Phrase.Empty)}{RoundActWords.Again(advice)}.";
                var condition = reasonLines is null ? AdviceWords.Check(advice) : RoundActWords.Condition(advice);
                lines.AddWithClauses(Phrase.Sentences(act, condition), RoundActWords.Because(advice, view.Words), indent: 3, further: reasonLines ?? 0, atLeastOne: advice.Advice == AdviceKind.Skip);
                if (advice.NewMinutes.Count > 0)
                {
                    lines.AddPieces([.. advice.NewMinutes.Select(m => Phrase.Of($"{AdviceWords.NewMinutes(m)};"))], indent: 7);
                }

                if (AdviceSentences.Split(advice) is { IsEmpty: false } split)
                {
                    lines.Add(split, indent: 7);
                }

                if (withStop && advice.StopRule is { } rule)
                {
                    lines.Add(AdviceWords.Stop(rule, view.Words), indent: 7);
                }
            }
        }
    }

    private static void BoxesAndStops(TextLines lines, SheetView view, int? reasonLines)
    {
        Boxes(lines, view, reasonLines, withStop: false);
        lines.AddPieces(ShortStops.Together(view));
    }

    private static void BoxToALine(TextLines lines, SheetView view, IReadOnlyList<Phrase> stops)
    {
        foreach (var box in view.Boxes)
        {
            lines.AddPieces([.. Changes(box, withMinutes: true)]);
        }

        lines.AddPieces(stops);
    }

    private static void AllInARow(TextLines lines, SheetView view) =>
        lines.AddPieces([.. view.Boxes.SelectMany(box => Changes(box, withMinutes: false))]);

    /// <summary>"1. B2: A 90 → 60 %," "C SKIP, 110 % → off;".</summary>
    private static IEnumerable<Phrase> Changes(RoundBox box, bool withMinutes) => box.Lines.Select((line, i) => Phrase.Of(
        $"{(i == 0 ? $"{SiteWords.Count(box.Order)}. {box.Controller}: " : "")}{string.Join(" + ", line.Programs.Select(p => p.Key.Program))} {RoundActWords.Short(line.First)}{(withMinutes ? MinutesWords.Stations(line.First.NewMinutes) : Phrase.Empty)}{(i < box.Lines.Count - 1 ? "," : ";")}"));
}
