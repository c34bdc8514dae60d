using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The advice after its numbers were cut to what the night and the pump give, and the fit of what remains.</summary>
internal static class FittedAdvice
{
    public static (IReadOnlyList<ProgramAdvice> Advice, NightFit Fit) Of(AdviceContext context, IReadOnlyList<Settled> settled, IReadOnlyList<LogEntry> log)
    {
        var may = settled.Where(s => s.MayChange).Select(s => s.Case.Program.Key).ToHashSet();
        IReadOnlyList<ProgramAdvice> advice = [.. settled.Select(s => s.Advise())];
        var growIns = advice.Where(a => a is { Advice: AdviceKind.Skip or AdviceKind.KeepOff, GrowInBegins: not null })
            .ToDictionary(a => a.Key, a => context.Settings.LastRunning(a.Key, context.AsOf).Percent);
        var nights = new Nights(context, log, settled.SelectMany(s => s.Case.TakenOut.Select(t => (s.Case.Program.Key, t.At))), growIns);
        var moves = new StartMoves(context, nights, may.Contains);
        Dictionary<ProgramKey, NightCut> cuts = [];
        ProposedStarts? starts = null;
        if (new NightCuts(context, nights).Of(advice, may.Contains) is { Count: > 0 } needed)
        {
            cuts = moves.WithStarts(needed, PercentsOf(advice), out starts).ToDictionary(c => c.Program);
            advice = [.. settled.Zip(advice, (s, a) => cuts.TryGetValue(a.Key, out var cut) ? s.CutTo(cut).Advise() : a)];
        }

        var percents = PercentsOf(advice);
        var fit = nights.Fit(nights.Runs(key => percents[key]), [.. advice.Where(a => cuts.ContainsKey(a.Key)).Select(a => CutOf(cuts[a.Key], a))]);
        return (advice, fit.IsClean ? fit with { Reaching = nights.WithEarlierThatFit(fit.Reaching, starts ?? new ProposedStarts(context.Programs, percents)) } : moves.Mend(fit, percents, starts));
    }

    private static Dictionary<ProgramKey, double> PercentsOf(IReadOnlyList<ProgramAdvice> advice) => advice.ToDictionary(a => a.Key, NightCuts.PercentAfter);

    private static FitCut CutOf(NightCut cut, ProgramAdvice advice) => new(cut.Program, cut.FromPercent, cut.ToPercent, advice.Shortfall, cut.StartThatFits) { Cause = cut.Cause, HoldsWithOthers = cut.HoldsWithOthers };
}
