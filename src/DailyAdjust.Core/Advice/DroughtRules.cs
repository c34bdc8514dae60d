using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>The most that an area may run under a stage, percent of base minutes.</summary>
public sealed record AreaCeiling(string Area, double Percent);

/// <summary>
/// A stage of the drought plan as watering rules: its days and hours, and a ceiling on every area. The base minutes' water over twelve
/// weeks from its first date, less the starts that its days and hours take out, is cut to its percentage of all of them: the first area
/// of the cut order down to nothing, then the next; what is still too much comes off the areas outside the order in equal shares.
/// </summary>
internal static class DroughtRules
{
    /// <summary>Twelve weeks: every usual pattern of days comes out even.</summary>
    private const int Days = 84;

    public static IReadOnlyList<Restriction> Of(Site site, IReadOnlyList<StageInForce> stages) =>
        [.. stages.SelectMany(s => Find(site, s) is { } stage ? Of(site, stage, s) : [])];

    /// <summary>Null: the description has no such stage.</summary>
    public static DroughtStage? Find(Site site, StageInForce stage) =>
        site.Stages.FirstOrDefault(s => string.Equals(s.Name, stage.Name, StringComparison.Ordinal));

    /// <summary>Every area's ceiling, in the order of the site; empty where the stage has no limit.</summary>
    public static IReadOnlyList<AreaCeiling> Ceilings(Site site, DroughtStage stage, DateOnly first)
    {
        if (stage.MostPercent is not { } most)
        {
            return [];
        }

        var used = site.Areas.Where(a => site.Stations.Any(s => ReferenceEquals(s.Area, a))).ToList();
        var water = used.ToDictionary(a => a.Name, a => Water(site, a, stage, first), StringComparer.Ordinal);
        var tooMuch = water.Values.Sum(w => w.Allowed) - (water.Values.Sum(w => w.All) * most / 100);
        var left = water.ToDictionary(w => w.Key, w => w.Value.Allowed, StringComparer.Ordinal);
        foreach (var area in stage.CutOrder.Where(left.ContainsKey))
        {
            var cut = Math.Clamp(tooMuch, 0, left[area]);
            left[area] -= cut;
            tooMuch -= cut;
        }

        var others = used.Select(a => a.Name).Where(a => !stage.CutOrder.Contains(a, StringComparer.Ordinal)).ToList();
        var rest = others.Sum(a => left[a]);
        if (tooMuch > 0 && rest > 0)
        {
            var share = Math.Max(0, 1 - (tooMuch / rest));
            others.ForEach(a => left[a] *= share);
        }

        return [.. used.Select(a => new AreaCeiling(a.Name, water[a.Name].Allowed > 0 ? PercentSearch.OnGrid(100 * left[a.Name] / water[a.Name].Allowed) : 100))];
    }

    private static IEnumerable<Restriction> Of(Site site, DroughtStage stage, StageInForce force)
    {
        if (stage.DaysNotAllowed is not null || stage.HoursNotAllowed is not null)
        {
            yield return new Restriction { Name = stage.Name, From = force.First, Until = force.Last, DaysNotAllowed = stage.DaysNotAllowed, HoursNotAllowed = stage.HoursNotAllowed };
        }

        foreach (var ceiling in Ceilings(site, stage, force.First))
        {
            yield return new Restriction { Name = stage.Name, From = force.First, Until = force.Last, Areas = [ceiling.Area], MostPercent = ceiling.Percent };
        }
    }

    /// <summary>Base minutes' water of an area: of all starts, and of those that the stage allows. Litres where every station's flow or ground is known, else mm.</summary>
    private static (double All, double Allowed) Water(Site site, Area area, DroughtStage stage, DateOnly first)
    {
        var byVolume = site.Stations.All(s => s.FlowLPerMin is not null || s.GroundM2 is not null);
        double all = 0, allowed = 0;
        foreach (var program in ZonePlan.AllPrograms(site))
        {
            var aStart = site.Stations
                .Where(s => ReferenceEquals(s.Area, area) && string.Equals(s.Key.Controller, program.Key.Controller, StringComparison.Ordinal))
                .Sum(s => s.BaseMinutes.GetValueOrDefault(program.Key.Program) * AMinute(s, byVolume));
            for (var date = first; aStart > 0 && date < first.AddDays(Days); date = date.AddDays(1))
            {
                if (!program.Program.Days.Includes(date))
                {
                    continue;
                }

                all += aStart * program.Program.Starts.Count;
                allowed += stage.DaysNotAllowed?.Includes(date) ?? false
                    ? 0
                    : aStart * program.Program.Starts.Count(t => !(stage.HoursNotAllowed?.Contains(t) ?? false));
            }
        }

        return (all, allowed);
    }

    private static double AMinute(Station station, bool byVolume) => byVolume
        ? station.FlowLPerMin ?? (station.Rate.MmPerHour / 60 * station.GroundM2!.Value)
        : station.Rate.MmPerHour / 60;
}
