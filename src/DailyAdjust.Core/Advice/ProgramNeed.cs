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

    private static readonly IReadOnlySet<ZoneNeed> None = new HashSet<ZoneNeed>(ReferenceEqualityComparer.Instance);

    /// <summary>Shares of ground compare to this.</summary>
    private const double ShareTolerance = 1e-9;

    /// <param name="zones">The program's zones, in station order.</param>
    /// <param name="satisfy">Share of the ground to be met, 0 to 1.</param>
    public static ProgramNeed Of(IReadOnlyList<ZoneNeed> zones, double satisfy)
    {
        var ground = GroundOf(zones);
        HashSet<ZoneNeed>? setAside = null;
        var percent = 0.0;
        bool canWait = true, due = false, isPast = false;
        foreach (var area in ByArea(zones))
        {
            var ranked = Ranked(area, ground);
            var aside = Aside(ranked);
            if (aside.Count > 0)
            {
                (setAside ??= new HashSet<ZoneNeed>(ReferenceEqualityComparer.Instance)).UnionWith(aside);
                ranked = [.. ranked.Where(z => !aside.Contains(z.Need))];
            }

            double whole = 0, waits = 0, isWithin = 0, notDue = 0;
            foreach (var zone in area)
            {
                if (aside.Contains(zone))
                {
                    continue;
                }

                var holds = ground(zone);
                whole += holds;
                waits += zone.CanWait ? holds : 0;
                isWithin += zone.IsPastAllowable ? 0 : holds;
                notDue += zone.Due ? 0 : holds;
            }

            percent = Math.Max(percent, Meeting(ranked, satisfy));
            canWait &= waits / whole >= satisfy - ShareTolerance;
            isPast |= isWithin / whole < satisfy - ShareTolerance;
            due |= notDue / whole < satisfy - ShareTolerance;
        }

        return new ProgramNeed(percent, canWait, due, zones, setAside ?? None) { IsPastAllowable = isPast };
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
    internal static double Meeting(IReadOnlyList<ZoneNeed> zones, Func<ZoneNeed, double> ground, double share) => Meeting(Ranked(zones, ground), share);

    private static double Meeting((ZoneNeed Need, double Ground)[] ranked, double share)
    {
        var (whole, met) = (0.0, 0.0);
        foreach (var zone in ranked)
        {
            whole += zone.Ground;
        }

        foreach (var zone in ranked)
        {
            met += zone.Ground;
            if (met / whole >= share - ShareTolerance)
            {
                return zone.Need.Percent;
            }
        }

        return ranked[^1].Need.Percent;
    }

    /// <summary>Those of each area, in station order.</summary>
    private static IEnumerable<IReadOnlyList<ZoneNeed>> ByArea(IReadOnlyList<ZoneNeed> zones) => zones.Count > 0 && zones.All(z => ReferenceEquals(z.Zone.Station.Area, zones[0].Zone.Station.Area))
        ? [zones]
        : zones.GroupBy(z => z.Zone.Station.Area.Name, StringComparer.Ordinal).Select(IReadOnlyList<ZoneNeed> (area) => [.. area]);

    /// <summary>With their ground, the least need first; equal ones in station order.</summary>
    private static (ZoneNeed Need, double Ground)[] Ranked(IReadOnlyList<ZoneNeed> zones, Func<ZoneNeed, double> ground) =>
        [.. zones.Select(z => (Need: z, Ground: ground(z))).OrderBy(z => z.Need.Percent)];

    /// <summary>The neediest, equal ones in station order, as far as they need much more than the others and hold little ground.</summary>
    private static List<ZoneNeed> Aside((ZoneNeed Need, double Ground)[] ranked)
    {
        var limit = MuchMore * Meeting(ranked, 0.5);
        var found = new List<ZoneNeed>();
        if (!(ranked[^1].Need.Percent > limit))
        {
            return found;
        }

        var (whole, aside) = (ranked.Sum(z => z.Ground), 0.0);
        foreach (var (need, holds) in ranked.OrderByDescending(z => z.Need.Percent))
        {
            if (need.Percent <= limit || (aside + holds) / whole > MostSetAside + ShareTolerance)
            {
                break;
            }

            aside += holds;
            found.Add(need);
        }

        return found;
    }
}
