using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Core.Advice;

/// <summary>What is settled for one program: on which way of judging it, and what was decided.</summary>
/// <param name="Rests">The way of judging that the decision rests on.</param>
/// <param name="Decision">What holds.</param>
/// <param name="Question">Nobody answered an earlier sheet; null = everything is answered.</param>
internal sealed record Settled(Judged Rests, Decision Decision, OpenQuestion? Question)
{
    public ProgramCase Case => Rests.Case;

    /// <summary>Somebody is at the box today and there is a start to decide about.</summary>
    public bool MayChange => Case.Need is not null;

    public ProgramAdvice Advise()
    {
        var otherWay = Question is null ? null : ReferenceEquals(Rests, Question.AsLogged) ? Question.IfDone : Question.AsLogged;
        var advice = Rests.Advisor.Advise(Rests, Decision, Supposing, otherWay);
        if (Question is not { } question)
        {
            return advice;
        }

        var (present, asked) = (question.AsLogged.Case.Present, question.Newest.Line);
        return advice with
        {
            Present = present.Setting,
            Confirmed = present.Confirmed,
            MayBeOn = question.MayBeOn,
            NewMinutes = advice.NewMinutes.Count == 0 ? [] : StationMinutes.Of(question.AsLogged.Advisor.Context, Case.Program, present.Setting, Decision.Percent!.Value),
            Unanswered = new UnansweredAdvice(
                question.Newest.Round, asked.Advice, asked.Percent, Alternative(question.IfDone), Alternative(question.AsLogged))
            {
                Issue = question.Newest.Issue,
                Since = question.Lines[0].Sheet,
                PauseDays = asked.PauseDays,
                NotedBefore = question.AsLogged.Case.Noted is { } noted && new[] { asked.Advice, question.IfDone.Decision.Advice, question.AsLogged.Decision.Advice }.Contains(AdviceKind.Resume)
                    ? FaultWords.BeforeTurningOn(noted, question.AsLogged.Advisor.Context.Site.Clock)
                    : Phrase.Empty,
                NewMinutes = asked.Advice is AdviceKind.Set or AdviceKind.Resume && asked.Percent is { } percent
                    ? StationMinutes.Of(question.AsLogged.Advisor.Context, Case.Program, present.Setting, percent)
                    : [],
            },
        };
    }

    /// <summary>
    /// The same with a smaller number, or left off, because the night or the pump gives no more; where that is on the dial already, whichever way an open question is answered,
    /// nobody walks for it. The night goes before the rule that an unanswered number moves by no more than a step a day.
    /// </summary>
    public Settled CutTo(NightCut cut)
    {
        var isOff = Decision.Advice == AdviceKind.Resume;
        var stays = !isOff && (Question is { } open ? new[] { open.AsLogged, open.IfDone } : [Rests]).All(j => j.Case.Present.Setting.Percent == cut.ToPercent);
        return this with
        {
            Decision = Decision with
            {
                Advice = cut.ToPercent <= 0 ? AdviceKind.KeepOff : isOff ? AdviceKind.Resume : stays ? AdviceKind.Leave : AdviceKind.Set,
                Percent = stays || cut.ToPercent <= 0 ? null : cut.ToPercent,
                Cause = Cause.NightTooShort,
                Cut = cut,
            },
        };
    }

    /// <summary>The whole decision under a supposed rain, both ways where nobody answered.</summary>
    private Decision Supposing(SupposedRain rain) => Question is { } question
        ? (question with { AsLogged = question.AsLogged.Supposing(rain), IfDone = question.IfDone.Supposing(rain) }).Decide(question.AsLogged.Advisor.Context).Decision
        : Rests.Supposing(rain).Decision;

    private static AlternativeAdvice Alternative(Judged judged) => new(
        judged.Decision.Advice,
        judged.Decision.Percent ?? (judged.Decision.Advice == AdviceKind.Leave ? judged.Case.Present.Setting.Percent : null))
    {
        PauseDays = judged.Decision.Advice == AdviceKind.Skip ? Pauses.DaysOf(judged.Case.Program.Controller, judged.Case.Context.Date, LookAhead.Resume(judged.Case.Context, judged.Case)?.On) : null,
    };
}
