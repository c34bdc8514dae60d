using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Programs that share a dial, and between which numbers it may be cut.</summary>
/// <param name="Programs">All that the dial acts on.</param>
/// <param name="Rank">Place of their most important ground in the site's order of priority, 0 the first.</param>
/// <param name="Asked">The largest number that is asked of it; 0 = nothing runs.</param>
/// <param name="Least">The smallest that is not a skip.</param>
/// <param name="Now">What it is set at, or ran at last; not above <paramref name="Asked"/>.</param>
/// <param name="IsFree">Somebody is there today and may turn it.</param>
/// <param name="MayStayOff">It is off, and to be turned on.</param>
internal sealed record CutDial(IReadOnlyList<PlannedProgram> Programs, int Rank, double Asked, double Least, double Now, bool IsFree, bool MayStayOff)
{
    /// <summary>The most important ground first, then in walking order.</summary>
    public static IReadOnlyList<CutDial> All(AdviceContext context, IReadOnlyList<ProgramAdvice> advice, Func<ProgramKey, bool> mayChange)
    {
        var place = advice.Select((a, i) => (a.Key, i)).ToDictionary(x => x.Key, x => x.i);
        return
        [
            .. context.Programs
                .GroupBy(p => p.Controller.Applies == PercentApplies.Controller ? p.Key.Controller : p.Key.ToString(), StringComparer.Ordinal)
                .Select(g => g.ToList())
                .OrderBy(g => g.Min(context.RankOf))
                .ThenBy(g => g.Max(p => place[p.Key]))
                .Select(g => Of(context, g, g.ConvertAll(p => advice[place[p.Key]]), mayChange)),
        ];
    }

    /// <summary>Where programs wait for one another, all of a box have a part in what one of them is in.</summary>
    public bool HasPartIn(NightTrouble trouble)
    {
        var controller = Programs[0].Controller;
        return trouble.Asking.Any(a => controller.Overlap == ProgramOverlap.Stack
            ? string.Equals(a.Program.Controller, controller.Id, StringComparison.Ordinal)
            : Programs.Any(p => p.Key == a.Program));
    }

    private static CutDial Of(AdviceContext context, List<PlannedProgram> programs, List<ProgramAdvice> advice, Func<ProgramKey, bool> mayChange)
    {
        var runs = advice.FindAll(a => NightCuts.PercentAfter(a) > 0);
        var asked = runs.Select(NightCuts.PercentAfter).DefaultIfEmpty(0).Max();
        var now = runs.Select(a => (a.Present.IsOff ? context.Settings.LastRunning(a.Key, context.AsOf) : a.Present).Percent).DefaultIfEmpty(0).Max();
        return new CutDial(
            programs, programs.Min(context.RankOf), asked, Math.Min(asked, DialNumber.Nearest(programs[0].Controller, context.Site.Report.SkipBelowPercent)), Math.Min(asked, now),
            runs.Count > 0 && runs.TrueForAll(a => mayChange(a.Key)), runs.TrueForAll(a => a is { Advice: AdviceKind.Resume, Present.IsOff: true, MayBeOn: false }));
    }
}
