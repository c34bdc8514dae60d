using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>From how much rain on a program would better be left out tonight: what this morning would have decided had that rain fallen by the first start.</summary>
internal static class StopRules
{
    /// <summary>As far as is looked, mm.</summary>
    private const double MostMm = 50;

    /// <summary>What a person reads off a gauge, mm: 0.02 in or 0.5 mm.</summary>
    public static double StepMm(UnitSystem units) => units == UnitSystem.Us ? 0.02 * Depth.MmPerInch : 0.5;

    /// <summary>The least rain in every gauge of the program's ground; null where none up to 50 mm changes anything, or it is left out already.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="box">All programs that share its percentage and are judged today: itself, or those of its controller.</param>
    /// <param name="supposing">The whole decision about the program under a supposed rain.</param>
    public static StopRule? Of(AdviceContext context, IReadOnlyList<ProgramCase> box, Func<SupposedRain, Decision> supposing)
    {
        var before = box.Min(c => c.Horizon.Starts[0].At);
        var step = StepMm(context.Site.Units);
        int low = 0, high = (int)(MostMm / step);
        bool LeavesOut(int steps) => supposing(new SupposedRain(steps * step, before)).Advice is AdviceKind.Skip or AdviceKind.KeepOff;
        if (!LeavesOut(high) || LeavesOut(low))
        {
            return null;
        }

        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = LeavesOut(middle) ? (low, middle) : (middle, high);
        }

        List<string> gauges = [.. box
            .SelectMany(c => context.ZonesOf(c.Program))
            .GroupBy(z => z.Station.Gauge, StringComparer.Ordinal)
            .OrderByDescending(g => g.Sum(z => z.Station.GroundM2 ?? 1))
            .Select(g => g.Key)];
        return new StopRule(gauges[0], high * step, before) { AlsoAt = gauges[1..] };
    }
}
