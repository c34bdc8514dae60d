using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>The round in ever fewer lines. No form loses a change, nor what the hand does about it: reasons go first.</summary>
internal static class ShortRound
{
    /// <summary>From the most to the least said; the last is as short as it gets.</summary>
    public static IEnumerable<IReadOnlyList<string>> Forms(SheetView view)
    {
        yield return Of(view, lines => Boxes(lines, view, reasonLines: 1, withStop: true));
        yield return Of(view, lines => Boxes(lines, view, reasonLines: 0, withStop: true));
        yield return Of(view, lines => Boxes(lines, view, reasonLines: 0, withStop: false));
        yield return Of(view, lines => Boxes(lines, view, reasonLines: null, withStop: false));
        yield return Of(view, lines => BoxToALine(lines, view));
        yield return Of(view, lines => lines.AddPieces([.. view.Boxes.SelectMany(box => Changes(box, withMinutes: false))]));
    }

    private static IReadOnlyList<string> Of(SheetView view, Action<TextLines> changes)
    {
        var lines = new TextLines(view.Language);
        lines.Add(RoundWords.Title(view).Shaped(title => title.ToUpperInvariant()));
        changes(lines);
        if (view.Boxes.Count == 0)
        {
            lines.Add(RoundWords.Nothing);
        }

        lines.Add(RoundWords.Foot(view.Counts));
        return lines.All;
    }

    /// <summary>A line or more for every change: what to do and on what condition, why as far as the line goes, what else to key in, and when to switch it off.</summary>
    /// <param name="reasonLines">So many lines more a reason may take than what to do takes; null = none is given.</param>
    private static void Boxes(TextLines lines, SheetView view, int? reasonLines, bool withStop)
    {
        foreach (var box in view.Boxes)
        {
            lines.Add(RoundWords.Box(box), most: 1);
            foreach (var line in box.Lines)
            {
                var advice = line.First;
                Phrase act = $"[ ] {RoundWords.Programs(line)}: {AdviceWords.ActAndNumbers(advice)}.";
                lines.AddWithClauses(Phrase.Sentences(act, RoundActWords.Condition(advice)), reasonLines is null ? Phrase.Empty : RoundActWords.Because(advice, view.Words), indent: 3, further: reasonLines ?? 0);
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

    private static void BoxToALine(TextLines lines, SheetView view)
    {
        foreach (var box in view.Boxes)
        {
            lines.AddPieces([.. Changes(box, withMinutes: true)]);
        }
    }

    /// <summary>"1. B2: A 90 → 60 %," "C SKIP, 110 % → off;".</summary>
    private static IEnumerable<Phrase> Changes(RoundBox box, bool withMinutes) => box.Lines.Select((line, i) => Phrase.Of(
        $"{(i == 0 ? $"{SiteWords.Count(box.Order)}. {box.Controller}: " : "")}{string.Join(" + ", line.Programs.Select(p => p.Key.Program))} {RoundActWords.Short(line.First)}{(withMinutes ? MinutesWords.Stations(line.First.NewMinutes) : Phrase.Empty)}{(i < box.Lines.Count - 1 ? "," : ";")}"));
}
