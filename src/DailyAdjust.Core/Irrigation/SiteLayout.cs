namespace DailyAdjust.Core.Irrigation;

/// <summary>What mornings of one description of a site share, so that none lays it out again. For one thread.</summary>
/// <param name="Plan">Its zones and programs.</param>
/// <param name="Starts">The days of its programs.</param>
/// <param name="Laying">How the stations of a start follow one another.</param>
internal sealed record SiteLayout(SitePlan Plan, OwnStarts Starts, NightRuns Laying)
{
    public static SiteLayout Of(SitePlan plan) => new(plan, new OwnStarts(plan.Site), new NightRuns(plan.Site));
}
