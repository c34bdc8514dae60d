using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Advice;

/// <summary>The advice after its numbers were cut to what the night and the pump give, and the fit of what remains.</summary>
internal static class FittedAdvice
{
    public static (IReadOnlyList<ProgramAdvice> Advice, NightFit Fit) Of(AdviceContext context, IReadOnlyList<Settled> settled, IReadOnlyList<LogEntry> log)
    {
        var nights = new Nights(context, log, settled.SelectMany(s => s.Case.TakenOut.Select(t => (s.Case.Program.Key, t.At))));
        var may = settled.Where(s => s.MayChange).Select(s => s.Case.Program.Key).ToHashSet();
        IReadOnlyList<ProgramAdvice> advice = [.. settled.Select(s => s.Advise())];
        var moves = new StartMoves(context, nights, may.Contains);
        var cuts = moves.WithStarts(new NightCuts(context, nights).Of(advice, may.Contains), advice.ToDictionary(a => a.Key, NightCuts.PercentAfter)).ToDictionary(c => c.Program);
        if (cuts.Count > 0)
        {
            advice = [.. settled.Zip(advice, (s, a) => cuts.TryGetValue(a.Key, out var cut) ? s.CutTo(cut).Advise() : a)];
        }

        var percents = advice.ToDictionary(a => a.Key, NightCuts.PercentAfter);
        return (advice, nights.Fit(
            nights.Runs(key => percents[key]), [.. advice.Where(a => cuts.ContainsKey(a.Key)).Select(a => CutOf(cuts[a.Key], a))], moves.Of(percents)));
    }

    private static FitCut CutOf(NightCut cut, ProgramAdvice advice) => new(cut.Program, cut.FromPercent, cut.ToPercent, advice.Shortfall, cut.StartThatFits);
}
