using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Stations that must not run together and would, by whichever programs and controllers.</summary>
internal static class StationClashes
{
    public static IEnumerable<StationClash> Of(Site site, IReadOnlyList<PlannedRun> runs)
    {
        foreach (var group in site.NotTogether)
        {
            var members = group.Stations.ToHashSet();
            var stations = runs.SelectMany(r => r.Stations.Where(s => members.Contains(s.Station.Key)).Select(s => (r.Start.Date, Run: s))).OrderBy(s => s.Run.Begins).ToList();
            for (var i = 0; i < stations.Count; i++)
            {
                var first = stations[i].Run;
                foreach (var (date, second) in stations.Skip(i + 1).TakeWhile(s => s.Run.Begins < first.Ends).Where(s => s.Run.Station.Key != first.Station.Key))
                {
                    yield return new StationClash(group.Name, first.Station.Key, second.Station.Key, date, second.Begins, second.Ends < first.Ends ? second.Ends : first.Ends);
                }
            }
        }
    }
}
