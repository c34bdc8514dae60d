using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>What is wrong or doubtful about a value on this site.</summary>
internal static class LogChecks
{
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
    public static (string What, string Hint)? Doubt(LogEntry entry, Site site)
    {
        if (entry.Kind == LogKind.Setting && entry.Value is { } percent and > 0)
        {
            var controller = site.ControllerOf(entry.Where.Name);
            return controller is null || Dial.Shows(controller, percent) ? null : ($"{Wording.Number(percent)} % is not on the dial of {controller.Id}", $"it shows {Dial.InWords(controller)}; {(controller.IsInRange(percent) ? "the entry counts as it stands" : "the entry is kept and not used: read the dial and log what it shows")}");
        }

        return entry.Kind == LogKind.Probe && site.Stations.FirstOrDefault(s => entry.Where.Covers(s) && s.Area.Soil.FieldCapacityPercent is null) is { } zone
            ? ($"the soil {zone.Area.Soil.Name} has no field_capacity, so the probe cannot correct station {zone.Key}", "give the soil its field_capacity in site.yaml; the reading is kept")
            : null;
    }
}
