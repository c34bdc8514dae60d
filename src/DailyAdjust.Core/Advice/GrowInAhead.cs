using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Advice;

/// <summary>What a grow-in that is ordered for the days to come asks of those who walk before it begins.</summary>
internal static class GrowInAhead
{
    /// <summary>Its first start where that comes after today's round and before the next visit's: today is the last visit to key it in; null = there is none.</summary>
    public static StartInForce? BeforeNextVisit(AdviceContext context, PlannedProgram program) =>
        context.GrowIns.First(program, context.RoundDone) is { } first && first.Start.At < context.Site.RoundDone(context.Visits.NextAfter(program, context.Date)) ? first : null;

    /// <summary>
    /// The advice to leave a program out, no further than to the first start of a grow-in: the day to look again is the last visit whose
    /// round is done by then, or its date where nobody comes before; a pause is over by then, and where even one day is too long there is none.
    /// </summary>
    /// <param name="context">The morning.</param>
    /// <param name="advice">As it would be without.</param>
    /// <param name="program">Which is left out.</param>
    /// <param name="box">All programs that share its percentage: they are left out together.</param>
    public static ProgramAdvice Bound(AdviceContext context, ProgramAdvice advice, ProgramCase program, IReadOnlyList<ProgramCase> box)
    {
        if (box.Where(c => c.GrowIn is null).Min(c => context.GrowIns.First(c.Program, context.RoundDone)?.Start.At) is not { } first)
        {
            return advice;
        }

        var clock = context.Site.Clock;
        var pause = advice.PauseDays;
        while (pause > 0 && SettingHistory.PauseEnd(clock, context.RoundDone, pause.Value) > first)
        {
            pause = pause > 1 ? pause - 1 : null;
        }

        var isSooner = advice.LookAgain is { } wanted && context.Site.RoundDone(wanted) <= first;
        return isSooner && pause == advice.PauseDays ? advice : advice with
        {
            LookAgain = isSooner ? advice.LookAgain : LastVisitBefore(context, program.Program, first) ?? clock.DateOf(first),
            After = isSooner ? advice.After : null,
            PauseDays = pause,
            GrowInBegins = first,
        };
    }

    /// <summary>After today; null = nobody comes before.</summary>
    private static DateOnly? LastVisitBefore(AdviceContext context, PlannedProgram program, DateTimeOffset first)
    {
        DateOnly? last = null;
        for (var visit = context.Visits.NextAfter(program, context.Date); context.Site.RoundDone(visit) <= first; visit = context.Visits.NextAfter(program, visit))
        {
            last = visit;
        }

        return last;
    }
}
