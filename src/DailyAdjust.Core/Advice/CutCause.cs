using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What a number was cut for: one of the two at least.</summary>
/// <param name="WindowCloses">When the watering window closes that a larger number would run past, UTC; null = it would not.</param>
/// <param name="PumpFrom">From when on a larger number would ask the pump for too much, UTC; null = it would not.</param>
public sealed record CutCause(DateTimeOffset? WindowCloses, DateTimeOffset? PumpFrom);

/// <summary>Finds what stands in the way of a larger number: what does not fit with the next one on the dial, or with all that is asked, and does with the number that was given.</summary>
/// <param name="nights">Lay out what runs.</param>
/// <param name="asked">What is asked of every program.</param>
/// <param name="given">What each runs at after the cuts.</param>
internal sealed class CutCauses(Nights nights, IReadOnlyDictionary<ProgramKey, double> asked, IReadOnlyDictionary<ProgramKey, double> given)
{
    private const double Tolerance = 1e-6;
    private readonly Lazy<IReadOnlyList<NightTrouble>> _now = new(() => nights.Troubles(nights.Runs(key => given[key])));

    /// <summary>Null where it cannot be told: what does not fit is there with the smaller number too.</summary>
    public CutCause? Of(CutDial dial)
    {
        var at = dial.Programs.Max(p => given[p.Key]);
        double[] larger = [Math.Max(dial.Least, at + dial.Programs[0].Controller.PercentStep), dial.Asked];
        return larger.Where(p => p <= dial.Asked).Distinct().Select(p => Between(dial, p)).FirstOrDefault(c => c is not null);
    }

    private CutCause? Between(CutDial dial, double percent)
    {
        var tried = new Dictionary<ProgramKey, double>(given);
        NightCuts.Turn(tried, asked, dial, percent);
        List<NightTrouble> then = [.. nights.Troubles(nights.Runs(key => tried[key])).Where(dial.HasPartIn)];
        var (window, pump) = (Added(dial, then, isWindow: true), Added(dial, then, isWindow: false));
        return window is null && pump is null ? null : new CutCause(window, pump);
    }

    /// <summary>When the first of what does not fit begins, where there is more of it than now.</summary>
    private DateTimeOffset? Added(CutDial dial, List<NightTrouble> then, bool isWindow)
    {
        var found = then.FindAll(t => t.IsWindow == isWindow);
        return found.Sum(t => t.Minutes) > _now.Value.Where(t => t.IsWindow == isWindow && dial.HasPartIn(t)).Sum(t => t.Minutes) + Tolerance ? found.Min(t => t.From) : null;
    }
}
