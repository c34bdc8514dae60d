using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Tries numbers on one dial while all others stand still, and takes the largest that fits.</summary>
/// <param name="nights">Lay out what runs.</param>
/// <param name="asked">What is asked of every program.</param>
/// <param name="dials">All of them.</param>
/// <param name="lasting">What no number mends.</param>
internal sealed class CutTrial(Nights nights, IReadOnlyDictionary<ProgramKey, double> asked, IReadOnlyList<CutDial> dials, LastingTroubles lasting)
{
    private const double Tolerance = 1e-6;
    private readonly Dictionary<ProgramKey, int> _ranks = dials.SelectMany(d => d.Programs.Select(p => (p.Key, d.Rank))).ToDictionary(x => x.Key, x => x.Rank);

    /// <param name="dial">Which.</param>
    /// <param name="percents">What everything else runs at: more important dials at their own numbers, those behind at their smallest.</param>
    /// <returns>0 = it stays off.</returns>
    public double LargestOf(CutDial dial, IReadOnlyDictionary<ProgramKey, double> percents)
    {
        bool Before(ProgramKey key) => _ranks[key] <= dial.Rank;
        var laid = new Dictionary<double, IReadOnlyList<NightTrouble>>();
        IReadOnlyList<NightTrouble> At(double percent)
        {
            // What is set now is often what is asked, or the smallest: the nights are laid out once for each number.
            if (laid.TryGetValue(percent, out var known))
            {
                return known;
            }

            var tried = new Dictionary<ProgramKey, double>(percents);
            NightCuts.Turn(tried, asked, dial, percent);
            return laid[percent] = nights.Troubles(nights.Runs(key => tried[key]));
        }

        var whole = At(dial.Asked);
        if (!whole.Any(t => dial.HasPartIn(t) && (dial.MayStayOff || IsMendable(t, _ => true) || IsMendable(t, Before) || (t.IsTooMuch(Before) && !lasting.Has(t, Before, dial)))))
        {
            return dial.Asked;
        }

        var least = At(dial.Least);
        if (dial.MayStayOff && DisturbedBy(dial, least) > DisturbedBy(dial, At(0)) + Tolerance)
        {
            return 0;
        }

        var now = At(dial.Now);
        double lastsAt = Minutes(least, Before), wholeAt = Minutes(whole, Before), nowAt = Minutes(now, _ => true);

        // Where even the smallest number leaves most of it, the start is in the way: no more than a raise is refused.
        var most = lastsAt > (wholeAt / 2) + Tolerance ? Math.Max(lastsAt, Minutes(now, Before)) : lastsAt;

        // What goes before it may be too much already: a dial that a smaller number takes out of that does not add to it.
        double Added(IReadOnlyList<NightTrouble> troubles) => troubles.Where(t => dial.HasPartIn(t) && t.IsTooMuch(Before) && !lasting.Has(t, Before, dial)).Sum(t => t.Minutes);
        var isOutOfIt = Added(least) <= Tolerance;
        bool Fits(double percent, IReadOnlyList<NightTrouble> troubles) => (!isOutOfIt || Added(troubles) <= Tolerance) && Minutes(troubles, Before) <= most + Tolerance && (percent <= dial.Now || Minutes(troubles, _ => true) <= nowAt + Tolerance);
        if (Fits(dial.Asked, whole))
        {
            return dial.Asked;
        }

        var step = dial.Programs[0].Controller.PercentStep;
        int low = 0, high = (int)Math.Ceiling((dial.Asked - dial.Least) / step);
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            var percent = dial.Least + (middle * step);
            (low, high) = Fits(percent, At(percent)) ? (middle, high) : (low, middle);
        }

        return dial.Least + (low * step);
    }

    /// <summary>Minutes that do not fit among some programs and that numbers can mend.</summary>
    private double Minutes(IReadOnlyList<NightTrouble> troubles, Func<ProgramKey, bool> some) =>
        troubles.Where(t => IsMendable(t, some)).Sum(t => t.Minutes);

    private bool IsMendable(NightTrouble trouble, Func<ProgramKey, bool> some) => trouble.IsTooMuch(some) && !lasting.Has(trouble, some);

    /// <summary>Minutes that do not fit in which more important ground waters, with the dial's programs beside it and nothing else.</summary>
    private double DisturbedBy(CutDial dial, IReadOnlyList<NightTrouble> troubles)
    {
        var own = dial.Programs.Select(p => p.Key).ToHashSet();
        bool IsBefore(ProgramKey key) => _ranks[key] < dial.Rank;
        return troubles.Where(t => t.Asking.Any(a => IsBefore(a.Program)) && t.IsTooMuch(key => IsBefore(key) || own.Contains(key))).Sum(t => t.Minutes);
    }
}
