using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>What a program needs: the largest percentage of its areas.</summary>
/// <param name="ExactPercent">On a grid of 1e-4.</param>
/// <param name="CanWait">Every area can.</param>
/// <param name="Due">Any area is.</param>
/// <param name="Zones">In station order.</param>
/// <param name="SetAside">Zones that need so much more than their area that hose and base minutes serve them better.</param>
internal sealed record ProgramNeed(double ExactPercent, bool CanWait, bool Due, IReadOnlyList<ZoneNeed> Zones, IReadOnlySet<ZoneNeed> SetAside)
{
    /// <summary>A zone that needs more than this times its area's median is set aside.</summary>
    internal const double MuchMore = 1.25;

    /// <summary>The most of an area's ground that may be set aside.</summary>
    internal const double MostSetAside = 1.0 / 3;

    /// <summary>Shares of ground compare to this.</summary>
    private const double ShareTolerance = 1e-9;

    /// <param name="zones">The program's zones, in station order.</param>
    /// <param name="satisfy">Share of the ground to be met, 0 to 1.</param>
    public static ProgramNeed Of(IReadOnlyList<ZoneNeed> zones, double satisfy)
    {
        var ground = GroundOf(zones);
        var setAside = new HashSet<ZoneNeed>(ReferenceEqualityComparer.Instance);
        var percent = 0.0;
        bool canWait = true, due = false, isPast = false;
        foreach (var area in zones.GroupBy(z => z.Zone.Station.Area.Name, StringComparer.Ordinal))
        {
            var all = area.ToList();
            setAside.UnionWith(Aside(all, ground));
            var rest = all.Where(z => !setAside.Contains(z)).ToList();
            var whole = rest.Sum(ground);
            percent = Math.Max(percent, Meeting(rest, ground, satisfy));
            canWait &= rest.Where(z => z.CanWait).Sum(ground) / whole >= satisfy - ShareTolerance;
            isPast |= rest.Where(z => !z.IsPastAllowable).Sum(ground) / whole < satisfy - ShareTolerance;
            due |= rest.Where(z => !z.Due).Sum(ground) / whole < satisfy - ShareTolerance;
        }

        return new ProgramNeed(percent, canWait, due, zones, setAside) { IsPastAllowable = isPast };
    }

    /// <summary>In some area, zones that hold more of the ground than may be left unmet are past their allowable depletion before the first start.</summary>
    public bool IsPastAllowable { get; private init; }

    /// <summary>The smallest percentage that meets half of the ground of a zone's area.</summary>
    public double MedianOf(ZoneNeed zone) =>
        Meeting([.. Zones.Where(z => string.Equals(z.Zone.Station.Area.Name, zone.Zone.Station.Area.Name, StringComparison.Ordinal))], GroundOf(Zones), 0.5);

    /// <summary>What a zone's ground counts: its area watered, or 1 for each if any station of the program lacks it.</summary>
    public static Func<ZoneNeed, double> GroundOf(IReadOnlyList<ZoneNeed> zones)
    {
        var weight = GroundWeight.Of(zones.Select(z => z.Zone.Station));
        return zone => weight(zone.Zone.Station);
    }

    /// <summary>The smallest percentage that meets zones holding a share of the ground.</summary>
    internal static double Meeting(IReadOnlyList<ZoneNeed> zones, Func<ZoneNeed, double> ground, double share)
    {
        var whole = zones.Sum(ground);
        var met = 0.0;
        foreach (var zone in zones.OrderBy(z => z.Percent))
        {
            met += ground(zone);
            if (met / whole >= share - ShareTolerance)
            {
                return zone.Percent;
            }
        }

        return zones.Max(z => z.Percent);
    }

    private static IEnumerable<ZoneNeed> Aside(IReadOnlyList<ZoneNeed> zones, Func<ZoneNeed, double> ground)
    {
        var whole = zones.Sum(ground);
        var limit = MuchMore * Meeting(zones, ground, 0.5);
        var aside = 0.0;
        foreach (var zone in zones.OrderByDescending(z => z.Percent))
        {
            if (zone.Percent <= limit || (aside + ground(zone)) / whole > MostSetAside + ShareTolerance)
            {
                yield break;
            }

            aside += ground(zone);
            yield return zone;
        }
    }
}
