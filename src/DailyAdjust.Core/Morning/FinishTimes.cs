using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Morning;

/// <summary>Each program's next start and when it ends at the advised setting.</summary>
internal static class FinishTimes
{
    public static ProgramAdvice FillIn(AdviceContext context, ProgramAdvice advice, NightFit fit)
    {
        var program = context.Programs.First(p => p.Key == advice.Key);
        var next = context.StartsOf(program, context.RoundDone)
            .Where(s => !advice.TakenOut.Any(t => t.At == s.Start.At))
            .Select(s => (StartInForce?)s).FirstOrDefault();
        if (next is not { } due)
        {
            return advice;
        }

        var start = due.Start;
        var percent = NightCuts.PercentAfter(advice);
        var planned = fit.Runs.FirstOrDefault(r => r.Program == advice.Key && r.Date == start.Date && r.Begins >= start.At);
        var finishes = planned?.Finishes ?? start.At + context.Laying.LengthOf(due.Due(program, percent) with { Out = OrderHits.StationsOf(context, program, start).ToHashSet() });
        return advice with { NextStart = start.At, Finishes = percent > 0 ? finishes : null };
    }
}
