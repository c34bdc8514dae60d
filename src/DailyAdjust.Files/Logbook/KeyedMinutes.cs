using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Logbook;

/// <summary>Minutes that somebody read at a box without a percentage: its setting is their percent of those in stations.csv.</summary>
internal static class KeyedMinutes
{
    /// <summary>Why minutes are refused, and what to write instead; null where the value is none, or the box has a percentage.</summary>
    public static (string What, string Hint)? Fault(LogLine line, Place where, Site site)
    {
        if (site.ControllerOf(where.Name) is not { Applies: PercentApplies.None } box
            || !NumberText.TrySplit(line.Value, out var number, out var beside)
            || Units.Find(beside.Length > 0 ? beside : line.Unit, UnitKind.Duration) is not { } unit)
        {
            return null;
        }

        var minutes = unit.ToMetric(number);
        return ($"the minutes of {box.Id} are logged as their percent of those in stations.csv", Base(where, site) is (var program, var whole) && minutes >= 0
            ? $"{Wording.Number(minutes)} of {Wording.Number(whole)} min is {Wording.Number(Percent(minutes, whole))} %: write setting {program} {Wording.Number(Percent(minutes, whole))}"
            : $"divide them by those in stations.csv and write setting {(where.Kind == PlaceKind.Station ? box.Id : where.ToString())} with the percentage (20 of 25 min is 80 %)");
    }

    /// <summary>The program or box, and its minutes in stations.csv, where the place has only one number of them.</summary>
    private static (string Program, double Minutes)? Base(Place where, Site site)
    {
        var known = site.Stations.Where(s => where.Covers(s))
            .SelectMany(s => s.BaseMinutes.Where(m => where.Kind != PlaceKind.Program || string.Equals(m.Key, where.Item, StringComparison.Ordinal)))
            .ToList();
        if (known.Count == 0 || known.Exists(m => m.Value != known[0].Value))
        {
            return null;
        }

        return where.Kind != PlaceKind.Station ? (where.ToString(), known[0].Value)
            : known.Count == 1 ? ($"{where.Name}/{known[0].Key}", known[0].Value)
            : null;
    }

    private static double Percent(double minutes, double whole) => Math.Round(minutes / whole * 100, 1);
}
