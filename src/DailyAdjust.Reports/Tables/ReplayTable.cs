using DailyAdjust.Core.Replay;
using DailyAdjust.Reports.Words;

namespace DailyAdjust.Reports.Tables;

/// <summary>A replay's figures under the columns that <c>replay</c> prints; depths in mm; visits and changes of the whole site alone.</summary>
public static class ReplayTable
{
    public static IReadOnlyList<string> Columns { get; } =
    [
        "policy", "controller", "station", "area", "ground_m2", "adequacy_percent", "excess_percent", "water_mm", "net_mm", "drainage_mm", "runoff_mm", "rain_runoff_mm",
        "etc_mm", "stress_days", "visits", "changes",
    ];

    /// <summary>Of every way to water: the site (controller, station and area empty), its areas (controller and station empty), its stations.</summary>
    public static Table Of(ReplayResult replay) => new(Columns, [.. replay.Policies.SelectMany(p => Head(p).Concat(p.Stations.Select(s => Station(p, s))))]);

    /// <summary>The site and its areas alone.</summary>
    public static Table Summary(ReplayResult replay) => new(
        [.. Columns.Where((_, i) => i is not (1 or 2 or 4))],
        [.. replay.Policies.SelectMany(Head).Select(row => row.Where((_, i) => i is not (1 or 2 or 4)).ToList())]);

    private static IEnumerable<IReadOnlyList<Cell>> Head(PolicyResult policy) =>
        [Site(policy), .. policy.Areas.Select(a => Row(policy, "", "", a.Area, null, a.Figures, Cell.Empty, Cell.Empty))];

    private static IReadOnlyList<Cell> Site(PolicyResult policy) =>
        Row(policy, "", "", "", null, policy.Figures, Cell.Fixed(policy.Visits, 0), Cell.Fixed(policy.Changes, 0));

    private static IReadOnlyList<Cell> Station(PolicyResult policy, StationResult result)
    {
        var station = result.Station;
        return Row(policy, station.Key.Controller, station.Key.Station, station.Area.Name, station.GroundM2, result.Figures, Cell.Empty, Cell.Empty);
    }

    private static IReadOnlyList<Cell> Row(
        PolicyResult policy, string controller, string station, string area, double? groundM2, ReplayFigures figures, Cell visits, Cell changes) =>
    [
        Cell.Text(ReplayWords.Of(policy.Policy)),
        Cell.Text(controller),
        Cell.Text(station),
        Cell.Text(area),
        Cell.Short(groundM2),
        Cell.Fixed(figures.AdequacyPercent, 2),
        Cell.Fixed(figures.ExcessPercent, 2),
        Cell.Fixed(figures.WaterMm, 4),
        Cell.Fixed(figures.NetMm, 4),
        Cell.Fixed(figures.DrainageMm, 4),
        Cell.Fixed(figures.RunoffMm, 4),
        Cell.Fixed(figures.RainRunoffMm, 4),
        Cell.Fixed(figures.EtcMm, 4),
        Cell.Fixed(figures.StressDays, 2),
        visits,
        changes,
    ];
}
