using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A number cut so that the night is long enough and the pump keeps up.</summary>
/// <param name="FromPercent">What the ground asks, on the dial.</param>
/// <param name="ToPercent">What fits; 0 = it stays off.</param>
internal sealed record NightCut(ProgramKey Program, double FromPercent, double ToPercent)
{
    /// <summary>A first start, near the present one, at which it would not have to be cut; null = none was found.</summary>
    public TimeOnly? StartThatFits { get; init; }

    /// <summary>What a larger number would run into; null = it cannot be told.</summary>
    public CutCause? Cause { get; init; }

    /// <summary>That start fits only where the other starts that the sheet proposes are changed too.</summary>
    public bool HoldsWithOthers { get; init; }
}

/// <summary>
/// Where the night is too short or the pump too small, percentages are cut in the site's order of priority: one dial after another, the most important ground
/// first, gets the largest number that fits while all that comes after it runs at the smallest that is not a skip, or stays off. What the smallest
/// numbers of all leave (a start at the same minute, a station that alone asks too much) no number mends: it is left out of account, and the dial is cut for the
/// rest. No dial goes below what it is set at now for ground named after it: there the other's start is in the way, which a number does not move. Nor is it cut
/// where the smallest number would leave more than half of the minutes that do not fit. Whoever nobody answered is cut like everybody else: the
/// night goes before the rule that such a number moves by no more than a step a day from the one last advised, which here it leaves downwards only.
/// </summary>
internal sealed class NightCuts(AdviceContext context, Nights nights)
{
    /// <param name="advice">What is advised, in walking order.</param>
    /// <param name="mayChange">Whether somebody is at the program's box today and it has a start to decide about.</param>
    public IReadOnlyList<NightCut> Of(IReadOnlyList<ProgramAdvice> advice, Func<ProgramKey, bool> mayChange)
    {
        var asked = advice.ToDictionary(a => a.Key, PercentAfter);
        var troubles = nights.Troubles(nights.Runs(key => asked[key]));
        if (troubles.Count == 0)
        {
            return [];
        }

        var involved = nights.Involved(troubles);
        var dials = CutDial.All(context, advice, mayChange);
        List<CutDial> open = [.. dials.Where(d => d.IsFree && d.Programs.Any(p => involved.Contains(p.Key)))];
        var percents = new Dictionary<ProgramKey, double>(asked);
        foreach (var dial in open)
        {
            Turn(percents, asked, dial, dial.Least);
        }

        var trial = new CutTrial(nights, asked, dials, new LastingTroubles(nights.Troubles(nights.Runs(key => percents[key]))));
        for (var i = 0; i < open.Count; i++)
        {
            // The others behind it stand at their smallest already.
            foreach (var behind in open.Skip(i + 1).Where(d => d.MayStayOff))
            {
                Turn(percents, asked, behind, behind.Rank > open[i].Rank ? 0 : behind.Least);
            }

            Turn(percents, asked, open[i], trial.LargestOf(open[i], percents));
        }

        var causes = new CutCauses(nights, asked, percents);
        var why = open.Where(d => d.Programs.Any(p => percents[p.Key] < asked[p.Key]))
            .SelectMany(d => causes.Of(d) is var cause ? d.Programs.Select(p => (p.Key, Cause: cause)) : [])
            .ToDictionary(x => x.Key, x => x.Cause);
        return
        [
            .. context.Programs.Where(p => percents[p.Key] < asked[p.Key]).Select(p => new NightCut(p.Key, asked[p.Key], percents[p.Key]) { Cause = why[p.Key] }),
        ];
    }

    /// <summary>What a program runs at once the advice is carried out; 0 = off.</summary>
    public static double PercentAfter(ProgramAdvice advice) => advice.Advice switch
    {
        AdviceKind.Set or AdviceKind.Resume => advice.Percent!.Value,
        AdviceKind.Leave or AdviceKind.AsSet => advice.Present.Percent,
        _ => 0,
    };

    /// <summary>Puts a number on a dial: none of its programs runs at more than is asked of it.</summary>
    internal static void Turn(Dictionary<ProgramKey, double> percents, IReadOnlyDictionary<ProgramKey, double> asked, CutDial dial, double percent)
    {
        foreach (var program in dial.Programs)
        {
            percents[program.Key] = Math.Min(asked[program.Key], percent);
        }
    }
}
