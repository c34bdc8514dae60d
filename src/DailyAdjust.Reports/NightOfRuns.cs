using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports;

/// <summary>What runs from one round to the next.</summary>
/// <param name="Date">The round's.</param>
/// <param name="Runs">By begin, at least one.</param>
public sealed record NightOfRuns(DateOnly Date, IReadOnlyList<ProgramRun> Runs)
{
    /// <summary>The runs of a fit, night by night.</summary>
    public static IReadOnlyList<NightOfRuns> Of(NightFit fit, Site site)
    {
        ArgumentNullException.ThrowIfNull(fit);
        ArgumentNullException.ThrowIfNull(site);
        return [.. fit.Runs.GroupBy(r => RoundBefore(site, r.Begins)).OrderBy(g => g.Key).Select(g => new NightOfRuns(g.Key, [.. g.OrderBy(r => r.Begins)]))];
    }

    private static DateOnly RoundBefore(Site site, DateTimeOffset begins)
    {
        var date = site.Clock.DateOf(begins);
        return begins < site.RoundDone(date) ? date.AddDays(-1) : date;
    }
}
