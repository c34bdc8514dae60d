using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Replay;

/// <summary>All days, watered in one way.</summary>
internal sealed class PolicySeason(ReplayPolicy policy, Site site, SitePlan plan, WeatherDay[] weather, bool rainKnownAhead)
{
    public PolicyResult Run(IReadOnlyList<ReplayDay> days, Action dayDone)
    {
        ReplayZone[] zones = [.. plan.Zones.Select(z => new ReplayZone(z, plan.Programs))];
        var watering = WateringOf(days);
        var advised = watering as AdvisedWatering;
        var events = new List<ReplayEvent>();
        Know(advised, zones);
        foreach (var day in days)
        {
            watering.Morning(day);
            foreach (var zone in zones)
            {
                day.Gather(zone, events);
                zone.Run(day, events, watering);
            }

            watering.Evening(day);
            Know(advised, zones);
            dayDone();
        }

        return ResultOf(zones, watering);
    }

    private static void Know(AdvisedWatering? advised, ReplayZone[] zones)
    {
        if (advised is not null)
        {
            foreach (var zone in zones)
            {
                advised.Know(zone);
            }
        }
    }

    private Watering WateringOf(IReadOnlyList<ReplayDay> days) => policy switch
    {
        ReplayPolicy.Advice => new AdvisedWatering(site, plan, weather, rainKnownAhead, everyChange: false),
        ReplayPolicy.Fixed => new DialWatering(plan.Programs.Count),
        ReplayPolicy.Perfect => new PerfectWatering(days, plan),
        ReplayPolicy.Refill => Refilling(),
        _ => throw new InvalidOperationException($"No such way to water: {policy}."),
    };

    /// <summary>Every visit fills the ground up: nothing left empty, nothing left out that is asked for, every change made.</summary>
    private AdvisedWatering Refilling()
    {
        Area Filled(Area area) => area with { LeaveEmpty = 0, Replace = 1, RunAt = 0 };
        var filled = site with
        {
            Report = site.Report with { SkipBelowPercent = 0, SkipRoom = null },
            Areas = [.. site.Areas.Select(Filled)],
            Stations = [.. site.Stations.Select(s => s with { Area = Filled(s.Area) })],
        };
        return new AdvisedWatering(filled, new SitePlan(filled), weather, rainKnownAhead: false, everyChange: true);
    }

    private PolicyResult ResultOf(ReplayZone[] zones, Watering watering)
    {
        var weight = GroundWeight.Of(zones.Select(z => z.Plan.Station));
        List<(StationResult Result, double Weight)> stations = [.. zones.Select(z => (new StationResult(z.Plan.Station, z.Figures), weight(z.Plan.Station)))];
        ReplayFigures MeanOf(IEnumerable<(StationResult Result, double Weight)> of) => ReplayFigures.Mean([.. of.Select(s => (s.Result.Figures, s.Weight))]);
        var (visits, changes, mornings) = watering switch
        {
            AdvisedWatering advised => (advised.Visits, advised.Changes, advised.Mornings),
            PerfectWatering perfect => (perfect.Visits(), perfect.Changes(), new int[plan.Programs.Count]),
            _ => (0, new int[plan.Programs.Count], new int[plan.Programs.Count]),
        };
        return new PolicyResult(
            policy,
            MeanOf(stations),
            visits,
            changes.Sum(),
            [.. stations.Select(s => s.Result)],
            [.. site.Areas
                .Select(area => (area.Name, Of: stations.Where(s => string.Equals(s.Result.Station.Area.Name, area.Name, StringComparison.Ordinal)).ToList()))
                .Where(area => area.Of.Count > 0)
                .Select(area => new AreaResult(area.Name, MeanOf(area.Of)))],
            [.. plan.Programs.Select((p, i) => new ProgramResult(p.Key, changes[i], mornings[i]))]);
    }
}
