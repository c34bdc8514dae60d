using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Morning;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Reports.Words;

/// <summary>Something that nobody has said yet.</summary>
/// <param name="Words">What it is about, in sentences.</param>
/// <param name="Answer">The act or command that answers it, with its lead.</param>
internal sealed record Question(Phrase Words, Phrase Answer)
{
    /// <summary>Program by program; what the short text leaves to the page.</summary>
    public IReadOnlyList<Phrase> Details { get; init; } = [];

    /// <summary>Another command, for more than this one; mostly empty.</summary>
    public Phrase Further { get; init; } = Phrase.Empty;
}

/// <summary>Questions of one kind.</summary>
/// <param name="Title">Of each.</param>
/// <param name="All">1 or more.</param>
/// <param name="Together">All of them in one, for where there is little room.</param>
internal sealed record QuestionGroup(Phrase Title, IReadOnlyList<Question> All, Question Together)
{
    /// <summary>What the sheet asks, in the order in which it presses.</summary>
    public static IReadOnlyList<QuestionGroup> Of(SheetView view)
    {
        var fresh = view.Sheet.Freshness;
        return
        [
            .. Some(FreshnessWords.NotAnsweredTitle, [.. fresh.UnansweredRounds.Select(round => Round(round, view))], _ => Rounds(fresh.UnansweredRounds, view)),
            .. Some(FreshnessWords.NotAnsweredTitle, fresh.PassedOverRounds is { Count: > 0 } passed ? [PassedOver(passed, view)] : [], all => all[0]),
            .. Some(FreshnessWords.NotConfirmedTitle, [.. FreshnessWords.Confirm(view).Select(c => new Question(c.Words, $"{c.Read}, {Answers.RoundFile}."))], Joined),
            .. Some(FreshnessWords.ProbeTitle, fresh.AssumedSoil.Count == 0 ? [] : [new(FreshnessWords.Probe(fresh.AssumedSoil), $"{FreshnessWords.LogbookLine} {Answers.ProbeLine(fresh.AssumedSoil[0].Station, view.Sheet.Date)}")], all => all[0]),
            .. Some(FreshnessWords.RainTitle, [.. FreshnessWords.UnknownByGauge(fresh).Select(days => Rain(days, view))], Joined),
        ];
    }

    private static IEnumerable<QuestionGroup> Some(Phrase title, IReadOnlyList<Question> all, Func<IReadOnlyList<Question>, Question> together) =>
        all.Count == 0 ? [] : [new(title, all, all.Count == 1 ? all[0] : together(all))];

    /// <summary>The first one's answer shows how.</summary>
    private static Question Joined(IReadOnlyList<Question> all) => new(Phrase.Join(" ", all.Select(q => q.Words)), all[0].Answer);

    private static Question Round(OpenRound round, SheetView view) => new(FreshnessWords.Round(round), Answers.RoundDone(round, view.Issue.SiteId))
    {
        Details = [.. view.NotAnswered.Where(p => p.Unanswered!.Round == round).Select(p => Phrase.Of($"{view.Label(p.Key)}: {AdviceWords.NotAnsweredAndNoted(p)}"))],
        Further = FreshnessWords.Since(round, view) is { } since ? $"{FreshnessWords.AnswerAll} {Answers.RoundsDone(since, round.Date, view.Issue.SiteId)}" : Phrase.Empty,
    };

    private static Question Rounds(IReadOnlyList<OpenRound> rounds, SheetView view) =>
        new(FreshnessWords.Rounds(rounds), $"{FreshnessWords.AnswerRounds} {Answers.AllRoundsDone(rounds[0].Date, rounds[^1].Date, view.Issue.SiteId)}");

    private static Question PassedOver(IReadOnlyList<DateOnly> passed, SheetView view) =>
        new(FreshnessWords.PassedOver(passed), $"{FreshnessWords.AnswerRound} {Answers.RoundsDone(passed[0], passed[^1], view.Issue.SiteId)}");

    private static Question Rain(IReadOnlyList<UnknownRain> days, SheetView view) =>
        new(FreshnessWords.UnknownRain(days, view.Words), $"{FreshnessWords.LogbookLine} {Answers.RainLine(days[0].Gauge, days[0].Date, view.Words.DepthUnit)}");
}
