using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A number cut so that the night is long enough and the pump keeps up.</summary>
/// <param name="FromPercent">What the ground asks, on the dial.</param>
/// <param name="ToPercent">What fits.</param>
internal sealed record NightCut(ProgramKey Program, double FromPercent, double ToPercent)
{
    /// <summary>A first start, near the present one, at which it would not have to be cut; null = none was found.</summary>
    public TimeOnly? StartThatFits { get; init; }
}

/// <summary>
/// Where the night is too short or the pump too small, percentages are cut in the site's order of priority: ground named last is cut
/// first, and by no more than helps. What no number of a dial that is not a skip mends (a start at the same minute, a station that alone asks
/// too much) is left out of account: the dial is cut for the rest. Whoever nobody answered is cut like everybody else: the night goes before the rule that
/// such a number moves by no more than a step a day from the one last advised, which here it leaves downwards only.
/// </summary>
internal sealed class NightCuts(AdviceContext context, Nights nights)
{
    private const double Tolerance = 1e-6;

    /// <param name="advice">What is advised.</param>
    /// <param name="mayChange">Whether somebody is at the program's box today and it has a start to decide about.</param>
    public IReadOnlyList<NightCut> Of(IReadOnlyList<ProgramAdvice> advice, Func<ProgramKey, bool> mayChange)
    {
        var percents = advice.ToDictionary(a => a.Key, PercentAfter);
        if (nights.Excess(nights.Runs(key => percents[key])) <= Tolerance)
        {
            return [];
        }

        var asked = new Dictionary<ProgramKey, double>(percents);
        var cut = new List<IReadOnlyList<PlannedProgram>>();
        foreach (var dial in Dials(advice).Where(d => d.All(p => mayChange(p.Key) || percents[p.Key] <= 0)))
        {
            if (IsInvolved(dial, percents) && LargestOf(dial, percents, CanBeMended(dial, percents)) is { } fits)
            {
                percents = fits;
                cut.Add(dial);
            }
        }

        var excess = nights.Excess(nights.Runs(key => percents[key]));
        foreach (var dial in Enumerable.Reverse(cut))
        {
            // What less important ground gave up may have been enough: give back as much as fits no worse, the most important first.
            var more = new Dictionary<ProgramKey, double>(percents);
            foreach (var program in dial)
            {
                more[program.Key] = asked[program.Key];
            }

            percents = LargestOf(dial, more, tried => nights.Excess(nights.Runs(key => tried[key])) <= excess + Tolerance) ?? percents;
        }

        return
        [
            .. context.Programs.Where(p => percents[p.Key] < asked[p.Key]).Select(p => new NightCut(p.Key, asked[p.Key], percents[p.Key])),
        ];
    }

    /// <summary>What a program runs at once the advice is carried out; 0 = off.</summary>
    public static double PercentAfter(ProgramAdvice advice) => advice.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => advice.Percent!.Value,
        AdviceKind.Leave or AdviceKind.AsSet => advice.Present.Percent,
        _ => 0,
    };

    /// <summary>Programs that share a dial, the least important ground first; then against the walking order.</summary>
    private IEnumerable<IReadOnlyList<PlannedProgram>> Dials(IReadOnlyList<ProgramAdvice> advice)
    {
        var walk = advice.Select((a, i) => (a.Key, i)).ToDictionary(x => x.Key, x => x.i);
        return context.Programs
            .GroupBy(p => p.Controller.Applies == PercentApplies.Controller ? p.Key.Controller : p.Key.ToString(), StringComparer.Ordinal)
            .Select(g => g.ToList())
            .OrderByDescending(g => g.Min(context.RankOf))
            .ThenByDescending(g => g.Max(p => walk[p.Key]));
    }

    private bool IsInvolved(IReadOnlyList<PlannedProgram> dial, Dictionary<ProgramKey, double> percents) => Troubles(dial, percents).Any();

    private IEnumerable<string> Troubles(IReadOnlyList<PlannedProgram> dial, Dictionary<ProgramKey, double> percents) => nights.Troubles(nights.Runs(key => percents[key]))
        .Where(t => dial.Any(p => percents[p.Key] > 0 && t.Programs.Contains(p.Key)))
        .Select(t => t.What);

    /// <summary>Tells whether numbers leave a dial in no trouble but that in which its least number leaves it.</summary>
    private Func<Dictionary<ProgramKey, double>, bool> CanBeMended(IReadOnlyList<PlannedProgram> dial, Dictionary<ProgramKey, double> percents)
    {
        var stay = Troubles(dial, At(dial, percents, Least(dial))).ToHashSet(StringComparer.Ordinal);
        return tried => Troubles(dial, tried).All(stay.Contains);
    }

    private double Least(IReadOnlyList<PlannedProgram> dial) => DialNumber.Nearest(dial[0].Controller, context.Site.Report.SkipBelowPercent);

    private static Dictionary<ProgramKey, double> At(IReadOnlyList<PlannedProgram> dial, Dictionary<ProgramKey, double> percents, double percent) =>
        percents.ToDictionary(p => p.Key, p => dial.Any(d => d.Key == p.Key) ? Math.Min(p.Value, percent) : p.Value);

    /// <summary>
    /// All percentages with the largest number on one dial that is enough; null where only numbers would be that the site calls a skip: then
    /// the start is in the way, not the length.
    /// </summary>
    private Dictionary<ProgramKey, double>? LargestOf(IReadOnlyList<PlannedProgram> dial, Dictionary<ProgramKey, double> percents, Func<Dictionary<ProgramKey, double>, bool> enough)
    {
        var controller = dial[0].Controller;
        var from = dial.Max(p => percents[p.Key]);
        var least = Least(dial);
        Dictionary<ProgramKey, double> At(double percent) => NightCuts.At(dial, percents, percent);
        if (enough(percents))
        {
            return percents;
        }

        if (least >= from || !enough(At(least)))
        {
            return null;
        }

        int low = 0, high = (int)Math.Ceiling((from - least) / controller.PercentStep);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = enough(At(least + (middle * controller.PercentStep))) ? (middle, high) : (low, middle);
        }

        return At(least + (low * controller.PercentStep));
    }
}
