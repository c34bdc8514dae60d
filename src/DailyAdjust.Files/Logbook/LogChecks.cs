using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>What is wrong or doubtful about a value on this site.</summary>
internal static class LogChecks
{
    /// <summary>Percent by volume; the driest soil of [FAO56] table 19 wilts at 2 %, half of which no meter finds among roots (common practice).</summary>
    private const double LeastContentPercent = 1;

    /// <summary>Why the entry could not do anything; null where it can.</summary>
    public static (string What, string Hint)? Fault(LogEntry entry, Site site)
    {
        switch (entry.Kind)
        {
            case LogKind.Run when entry.Where.Kind == PlaceKind.Program && entry.Unit == LogUnit.Minutes:
                return ("minutes belong to a station, a program runs at a percentage", "write the station (C1/3), or the value in %");
            case LogKind.Run when entry.Where.Kind == PlaceKind.Station && entry.Unit == LogUnit.Percent:
                return ("a percentage belongs to a program, a station runs for minutes", "write the program (C1/P2), or the value in min");
            case LogKind.Hose when entry.Unit == LogUnit.Litres && site.Stations.FirstOrDefault(s => entry.Where.Covers(s) && s.GroundM2 is null) is { } bare:
                return ($"the ground of station {bare.Key} is not known, so a volume gives no depth", "write a depth, or give the station its area watered in stations.csv");
            default:
                return null;
        }
    }

    /// <summary>What somebody should look at though the entry counts; null where nothing is odd.</summary>
    public static (string What, string Hint)? Doubt(LogEntry entry, Site site) => entry switch
    {
        { Kind: LogKind.Setting, Value: { } percent and > 0 } => OffTheDial(site.ControllerOf(entry.Where.Name), percent),
        { Kind: LogKind.WaterIn, Value: { } mm } => MoreThanTheGroundHolds(entry.Where, mm, site),
        { Kind: LogKind.Pause } => NoPause(entry.Where, site),
        { Kind: LogKind.Probe or LogKind.Spot, Value: > 0 and < LeastContentPercent and var percent } => (
            $"{Wording.Number(percent)} % of water by volume is less than ground with roots ever holds", $"where the meter shows a fraction, write {Wording.Number(percent)} m³/m³, which is {Wording.Number(percent * 100)} %; the entry counts as it stands"),
        { Kind: LogKind.Probe } => NoFieldCapacity(entry.Where, site),
        _ => null,
    };

    private static (string What, string Hint)? OffTheDial(Controller? controller, double percent) => controller is null || Dial.Shows(controller, percent) ? null
        : ($"{Wording.Number(percent)} % is not on the dial of {controller.Id}", $"it shows {Dial.InWords(controller)}; {(controller.IsInRange(percent) ? "the entry counts as it stands" : "the entry is kept and not used: read the dial and log what it shows")}");

    /// <summary>What is watered in is to stay where the roots are: of a depth above total available water some drains even from the driest ground.</summary>
    private static (string What, string Hint)? MoreThanTheGroundHolds(Place where, double mm, Site site)
    {
        var least = site.Stations.Where(where.Covers).MinBy(s => s.Area.TotalAvailableWaterMm);
        return least is null || mm <= least.Area.TotalAvailableWaterMm + Depth.ToleranceMm ? null
            : ($"{Shown(mm, site)} is more than the ground of {least.Key} ever holds ({Shown(least.Area.TotalAvailableWaterMm, site)} from dry to full)",
                $"the rest drains below the roots, and what was applied goes with it; the entry counts as it stands. Is the depth right? If not, log it again with the right one, or take it back with void; to wash salts down there is flush");
    }

    /// <summary>A box that cannot pause was switched off, and stays off until somebody comes.</summary>
    private static (string What, string Hint)? NoPause(Place where, Site site)
    {
        List<string> boxes = [.. site.Controllers.Where(c => c.PauseDays < 1 && c.Programs.Any(p => where.Covers(new ProgramKey(c.Id, p.Id)))).Select(c => c.Id)];
        var box = boxes.Count == 1;
        return boxes.Count == 0 ? null
            : ($"{Wording.AllOf(boxes)} cannot pause by {(box ? "itself" : "themselves")}: site.yaml gives {(box ? "it" : "them")} no pause",
                $"the entry counts as it stands, and at its end the balance takes {(box ? "it" : "them")} to run again. If {(box ? "it was" : "they were")} switched off, log off ({(where.Kind == PlaceKind.Site ? boxes[0] : where.ToString())}), which takes its place; if {(box ? "it does" : "they do")} pause, write the most days into site.yaml (pause: 7 d)");
    }

    private static (string What, string Hint)? NoFieldCapacity(Place where, Site site) =>
        site.Stations.FirstOrDefault(s => where.Covers(s) && s.Area.Soil.FieldCapacityPercent is null) is { } zone
            ? ($"the soil {zone.Area.Soil.Name} has no field_capacity, so the probe cannot correct station {zone.Key}", "give the soil its field_capacity in site.yaml; the reading is kept")
            : null;

    private static string Shown(double mm, Site site)
    {
        var unit = Units.Find(site.Units == UnitSystem.Us ? "in" : "mm", UnitKind.Depth)!;
        return FormattableString.Invariant($"{unit.FromMetric(mm):0.##} {unit.Symbol}");
    }
}
