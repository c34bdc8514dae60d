using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>
/// report.txt: the sheet for a text message or a terminal, in under 40 lines up to the changes of a large course. The round loses no change and a question no answer: where there are many it says less about each, and the rest of the
/// sheet gives way. What the rest has no room for it counts or names; report.html has all of it.
/// </summary>
internal static class ShortReport
{
    private const int MostLines = 39;

    /// <summary>Before and after the round.</summary>
    private const int Blanks = 2;

    public static string Write(SheetView view)
    {
        var head = Head(view);
        var caution = Caution(view);
        var (before, after) = (ShortSections.Before(view), ShortSections.After(view));
        ShortSection[] sections = [.. before, .. after];
        var room = MostLines - head.Count - Blanks - caution.Count;
        var form = FirstThatFits(view, f => f.Lines.Count + Least(sections, f) <= room);
        var round = form.Lines;
        var shares = LineShares.Of(sections, room - round.Count);
        if (shares.Contains(0) || form.LeftOut.Count > 0)
        {
            shares = LineShares.Of(sections, room - round.Count - 1);
        }

        var lines = new TextLines(view.Language);
        lines.AddAll(head);
        lines.AddAll(before.SelectMany((s, i) => s.LinesIn(shares[i])));
        lines.Blank();
        lines.AddAll(round);
        lines.Blank();
        lines.AddAll(after.SelectMany((s, i) => s.LinesIn(shares[before.Count + i])));
        if (form.LeftOut.Concat(sections.Where((_, i) => shares[i] == 0).Select(s => s.Title)).ToList() is { Count: > 0 } dropped)
        {
            lines.Add(ShortTextWords.Also(dropped), most: 1);
        }

        lines.AddAll(caution);
        return lines.ToString();
    }

    /// <summary>The last where none does.</summary>
    private static ShortRoundForm FirstThatFits(SheetView view, Predicate<ShortRoundForm> fits)
    {
        ShortRoundForm? last = null;
        foreach (var form in ShortRound.Forms(view))
        {
            last = form;
            if (fits(form))
            {
                break;
            }
        }

        return last!;
    }

    /// <summary>What the sections take at least beside a form of the round; those that give way to it are named in a line.</summary>
    private static int Least(ShortSection[] sections, ShortRoundForm form)
    {
        var stay = sections.Where(s => !form.IsBeforeKnown || s.IsKept || s.Order < ShortSections.TickedOrder).ToList();
        return stay.Sum(s => Math.Min(s.Wanted, s.Least)) + (stay.Count < sections.Length || form.LeftOut.Count > 0 ? 1 : 0);
    }

    /// <summary>Whole in every language.</summary>
    private static IReadOnlyList<string> Caution(SheetView view)
    {
        var lines = new TextLines(view.Language);
        lines.Add(CautionWords.Short);
        return lines.All;
    }

    private static IReadOnlyList<string> Head(SheetView view)
    {
        var lines = new TextLines(view.Language);
        var fresh = view.Sheet.Freshness;
        lines.Add(TextReport.Title(view), most: 2);
        lines.Add(HoseWords.AfterRound(view), most: 2);
        if (view.NoAdvice)
        {
            lines.Add($"! {FreshnessWords.NoAdviceTitle}: {FreshnessWords.NoAdvice(fresh)} {FreshnessWords.LeaveDials}", most: 3);
        }

        lines.Add(FreshnessWords.Through(fresh, view.Words), most: 2);
        return lines.All;
    }
}
