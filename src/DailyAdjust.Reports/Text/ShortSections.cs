using DailyAdjust.Core.Phrases;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Text;

/// <summary>What the short text says beside the round, as far as there is room for it; each in the order in which it is read.</summary>
internal static class ShortSections
{
    private const string Urgent = "! ";
    private const int LeastByHand = 5;
    private const int MostByHand = 16;
    private const int MostAsked = 6;
    private const int MostAct = 10;

    /// <summary>A command at the end of a sentence stays whole where it has a line of its own.</summary>
    private const int LeastWithCommand = 2;

    private const int LeastHose = 3;
    private const int MostHose = 10;
    private const int MostOtherwise = 6;

    // Who is given room first: what is to be done at once, what waits for an answer, what is done at a box beside its dials, what is done today otherwise, what is to be ticked, what is to be known.
    private const int AtOnceOrder = 0;
    private const int AskedOrder = 1;
    private const int ActOrder = 2;
    private const int TodayOrder = 3;
    internal const int TickedOrder = 4;
    private const int KnownOrder = 5;

    /// <summary>Letters of a name in a line of the hose list: what to do there stands beside it.</summary>
    private const int MostOfName = 40;

    /// <summary>Before the round.</summary>
    public static IReadOnlyList<ShortSection> Before(SheetView view) => [.. AtOnce(view), .. Asked(view)];

    /// <summary>After the round.</summary>
    public static IReadOnlyList<ShortSection> After(SheetView view) => [.. Otherwise(view), .. Hose(view), .. Night(view), .. Ground(view), .. News(view)];

    private static IEnumerable<ShortSection> AtOnce(SheetView view)
    {
        if (view.Sheet.RunByHand is { } list)
        {
            var groups = ByHandWords.Groups(list, view).Select(g => Phrase.Of($"{g.Title}: {Phrase.Join("; ", g.Lines)}"));
            yield return ShortSection.List(view.Language, ByHandWords.Title(list).Shaped(title => title.ToUpperInvariant()), [ByHandWords.Lead(list, view), .. groups, .. ByHandWords.Rest(list, view)], most: 3) with { Least = LeastByHand, Most = MostByHand, Order = AtOnceOrder };
        }

        foreach (var group in BoxCheckWords.Of(view))
        {
            yield return ShortSection.List(view.Language, group.Title, group.Lines, Urgent) with { Order = AtOnceOrder };
        }
    }

    /// <summary>The answer of each is never cut.</summary>
    private static IEnumerable<ShortSection> Asked(SheetView view) =>
    [
        .. QuestionGroup.Of(view).Select(group => ShortSection.Asking(view.Language, group, Urgent) with { Order = AskedOrder, Most = MostAsked }),
        .. view.Issue.Notices.Count == 0 ? Array.Empty<ShortSection>()
            : [ShortSection.List(view.Language, FreshnessWords.FailedTitle, [.. view.Issue.Notices.Select(n => FreshnessWords.Sentence(Phrase.Verbatim(Typed.MarkCommands(n))))], Urgent) with { Order = AskedOrder, Most = MostAsked }],
    ];

    private static IEnumerable<ShortSection> News(SheetView view)
    {
        var fresh = view.Sheet.Freshness;
        IReadOnlyList<(Phrase Title, Phrase[] Items)> news =
        [
            (WaterWords.PassedTitle, [.. WaterWords.Passed(view.Sheet.Water, view.Words).Select(FreshnessWords.Sentence)]),
            (CorrectionWords.Title, view.Sheet.Corrections is { } corrections ? [Phrase.Join(" ", CorrectionWords.Of(corrections, view))] : []),
            (SecondLookWords.Title, view.Sheet.SecondLook is { } look ? [SecondLookWords.Line(look, view.Words)] : []),
            (FreshnessWords.AssumedTitle, [.. fresh.Assumed.Select(FreshnessWords.Sentence)]),
            (FreshnessWords.SetAsideTitle, [.. fresh.SetAside.Select(FreshnessWords.Sentence)]),
            (FreshnessWords.DoubtsTitle, [.. fresh.Doubts.Select(FreshnessWords.Sentence)]),
        ];
        return news.Where(a => a.Items.Length > 0).Select(a => ShortSection.List(view.Language, a.Title, [Phrase.Join(" ", a.Items)]) with { Order = KnownOrder });
    }

    private static IEnumerable<ShortSection> Otherwise(SheetView view)
    {
        var off = view.AsSet.Where(p => p.Present.IsOff).Select(p => Phrase.Verbatim(view.Label(p.Key))).ToList();
        var running = view.AsSet.Where(p => !p.Present.IsOff).Select(p => Phrase.Of($"{view.Label(p.Key)} {SiteWords.Setting(p.Present.Percent)}")).ToList();
        foreach (var (title, programs) in new[] { (RoundWords.OffNow, off), (RoundWords.RunningAsSet, running) })
        {
            if (programs.Count > 0)
            {
                yield return ShortSection.Row(view.Language, title, programs) with { Order = TodayOrder };
            }
        }

        foreach (var group in ExceptionWords.Of(view))
        {
            yield return (group.Lines.Count == 0 ? ShortSection.Sentence(view.Language, group.Title, $"{Urgent}{group.Title}") : ShortSection.List(view.Language, group.Title, group.Lines, Urgent, most: 3)) with
            {
                Order = group.IsAct ? ActOrder : TodayOrder,
                Least = group.IsAct ? Math.Min(MostAct, group.Lines.Count + 1) : group.Lines is [var only] && Typed.Pieces(only.In(view.Language)).Any(p => p.IsTyped) ? LeastWithCommand : 1,
                Most = group.IsAct ? MostAct : MostOtherwise,
            };
        }
    }

    private static IEnumerable<ShortSection> Hose(SheetView view)
    {
        if (view.Sheet.Driest.Count > 0)
        {
            yield return ShortSection.Acts(
                view.Language, SectionWords.Driest, view.NoAdvice ? SectionWords.OldWeather : Phrase.Empty,
                [.. view.Sheet.Driest.Select(dry => (TextReport.DryAct(dry, view.Words, MostOfName), TextReport.DryWhy(dry, view.Words)))]) with
            { Order = TodayOrder, Least = LeastHose, Most = MostHose };
        }
    }

    private static IEnumerable<ShortSection> Night(SheetView view)
    {
        var (sheet, words) = (view.Sheet, view.Words);
        var due = sheet.DueRuns.Where(r => !r.Answered).Select(r => Phrase.Of($"{view.Label(r.Program)} {words.When(r.Start)} to {words.Time(r.Finishes)}")).ToList();
        if (due.Count > 0)
        {
            yield return ShortSection.Row(view.Language, SectionWords.DidItRun, due) with { Order = TickedOrder };
        }

        if (RoundWords.RainLead(view) is { IsEmpty: false } rain)
        {
            yield return ShortSection.Sentence(view.Language, TableWords.Rain, rain) with { Order = KnownOrder };
        }

        if (sheet.Forecast is { Days: [var today, ..] } forecast)
        {
            Phrase[] said = [ForecastWords.Made(forecast, words), .. ForecastWords.Cautions(today.Night, words), ForecastWords.Night(today.Night, words)];
            yield return ShortSection.Sentence(view.Language, ForecastWords.Title, Phrase.Join(" ", said), most: 3) with { Order = KnownOrder };
        }
    }

    private static IEnumerable<ShortSection> Ground(SheetView view)
    {
        var (sheet, words) = (view.Sheet, view.Words);
        IReadOnlyList<(Phrase Title, IReadOnlyList<Phrase> Items)> today =
        [
            .. GroundWords.Of(view).Where(g => g.Title.Equals(GroundWords.Spots) || g.Title.Equals(GroundWords.Minutes)),
            (VisitWords.Title, [.. VisitWords.Order(view) is { IsEmpty: false } boxes ? [boxes] : Array.Empty<Phrase>(), .. sheet.IfVisited.Select(worth => VisitWords.Line(worth, view))]),
            (SectionWords.Fit, FitWords.Problems(sheet.Fit, words)),
        ];
        foreach (var (title, items) in today.Where(t => t.Items.Count > 0))
        {
            yield return ShortSection.List(view.Language, title, items) with { Order = TodayOrder };
        }

        if (sheet.Wettest.Count > 0)
        {
            yield return ShortSection.Row(view.Language, SectionWords.Wettest, [.. sheet.Wettest.Select(w => Phrase.Of($"{w.Name} {words.DepthOf(w.DrainedMm + w.RanOffMm)}"))], SectionWords.WetCaution) with { Order = KnownOrder };
        }

        if (sheet.StandingOrders.Count > 0)
        {
            yield return ShortSection.List(view.Language, SectionWords.Standing, [.. sheet.StandingOrders.Select(order => StandingWords.Order(order, view))], most: 1) with { Order = KnownOrder };
        }
    }
}
