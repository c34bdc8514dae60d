using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Stations that must not run together and would, by whichever programs and controllers.</summary>
internal static class StationClashes
{
    public static IEnumerable<StationClash> Of(Site site, IReadOnlyList<PlannedRun> runs) => site.NotTogether.SelectMany(group => Pairs(group, runs).Select(p => new StationClash(
        group.Name, p.First.Station.Station.Key, p.Second.Station.Station.Key, p.Second.Run.Start.Date, p.Second.Station.Begins,
        p.Second.Station.Ends < p.First.Station.Ends ? p.Second.Station.Ends : p.First.Station.Ends)));

    /// <summary>Programs whose stations clash.</summary>
    public static IEnumerable<ProgramKey> Programs(Site site, IReadOnlyList<PlannedRun> runs) =>
        site.NotTogether.SelectMany(group => Pairs(group, runs)).SelectMany(p => new[] { p.First.Run.Program.Key, p.Second.Run.Program.Key });

    /// <summary>Whether a station of some runs clashes with any.</summary>
    /// <param name="some">Part of <paramref name="runs"/>.</param>
    public static bool Any(Site site, IReadOnlyList<PlannedRun> some, IReadOnlyList<PlannedRun> runs)
    {
        foreach (var group in site.NotTogether)
        {
            var mine = Members(group, some).ToList();
            if (mine.Count > 0 && Members(group, runs).Any(o => mine.Exists(m => m.Station.Station.Key != o.Station.Station.Key && m.Station.Begins < o.Station.Ends && m.Station.Ends > o.Station.Begins)))
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<(Member First, Member Second)> Pairs(StationGroup group, IReadOnlyList<PlannedRun> runs)
    {
        var stations = Members(group, runs).OrderBy(s => s.Station.Begins).ToList();
        for (var i = 0; i < stations.Count; i++)
        {
            var first = stations[i];
            foreach (var second in stations.Skip(i + 1).TakeWhile(s => s.Station.Begins < first.Station.Ends).Where(s => s.Station.Station.Key != first.Station.Station.Key))
            {
                yield return (first, second);
            }
        }
    }

    private static IEnumerable<Member> Members(StationGroup group, IReadOnlyList<PlannedRun> runs)
    {
        var members = group.Stations.ToHashSet();
        return runs.SelectMany(r => r.Stations.Where(s => members.Contains(s.Station.Key)).Select(s => new Member(r, s)));
    }

    private readonly record struct Member(PlannedRun Run, StationRun Station);
}
