namespace DailyAdjust.Tests.Plain;

/// <summary>One area of one program: who is set aside, and what the rest needs.</summary>
internal sealed record PlainArea(IReadOnlyList<PlainZoneNeed> SetAside, double Percent, bool CanWait, bool Due)
{
    private const double SameShare = 1e-9;

    /// <param name="zones">The area's zones in station order.</param>
    /// <param name="ground">Their weight.</param>
    /// <param name="satisfy">Share of the ground to be met.</param>
    public static PlainArea Of(IReadOnlyList<PlainZoneNeed> zones, Func<PlainZoneNeed, double> ground, double satisfy)
    {
        var all = zones.Sum(ground);
        var median = SmallestThatMeets(zones, ground, 0.5);

        var setAside = new List<PlainZoneNeed>();
        foreach (var zone in zones.OrderByDescending(z => z.Percent))
        {
            var share = (setAside.Sum(ground) + ground(zone)) / all;
            if (zone.Percent <= 1.25 * median || share > (1.0 / 3) + SameShare)
            {
                break;
            }

            setAside.Add(zone);
        }

        var rest = zones.Except(setAside).ToList();
        return new(
            setAside,
            SmallestThatMeets(rest, ground, satisfy),
            Holds(rest, ground, satisfy, z => z.CanWait),
            !Holds(rest, ground, satisfy, z => !z.Due));
    }

    private static double SmallestThatMeets(IReadOnlyList<PlainZoneNeed> zones, Func<PlainZoneNeed, double> ground, double share) =>
        zones.Select(z => z.Percent).Order().First(p => Holds(zones, ground, share, z => z.Percent <= p));

    private static bool Holds(IReadOnlyList<PlainZoneNeed> zones, Func<PlainZoneNeed, double> ground, double share, Func<PlainZoneNeed, bool> which) =>
        zones.Where(which).Sum(ground) / zones.Sum(ground) >= share - SameShare;
}
