using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Plan;

/// <summary>What about the base programs, as they stand at 100 %, no percentage can put right. Plain sentences in the site's units.</summary>
public static class BaseProgramCheck
{
    /// <summary>Long enough for every pattern of weekdays, odd, even and short cycles of days.</summary>
    private const int DaysLookedAt = 28;

    private const double Tolerance = 1e-9;

    public static IReadOnlyList<string> Of(Site site) => [.. Nights(site), .. Peak(site)];

    /// <summary>What does not fit at 100 % already: the sheet would say so every morning.</summary>
    private static IEnumerable<string> Nights(Site site)
    {
        var laying = new NightRuns(site);
        var from = site.Clock.DayStart(site.Start);
        var runs = laying.Between(new GrowIns(site, []), ZonePlan.AllPrograms(site), from, site.Clock.DayStart(site.Start.AddDays(DaysLookedAt)), (_, _) => 100);
        foreach (var found in ProgramOverlaps.Of(laying, runs).GroupBy(o => (o.Controller, o.First, o.Second)))
        {
            var longest = found.Max(o => o.Minutes);
            yield return $"{found.Key.Controller}: {found.Key.First} and {found.Key.Second} overlap at 100 % already, by up to {Words.Minutes(longest)} on {found.Select(o => o.Date).Distinct().Count()} of {DaysLookedAt} days: move a start.";
        }

        foreach (var found in StationClashes.Of(site, runs).GroupBy(c => (c.Group, c.First, c.Second)))
        {
            yield return $"{found.Key.First} and {found.Key.Second} must not run together ({found.Key.Group}) and do at 100 % already, on {found.Select(c => c.Date).Distinct().Count()} of {DaysLookedAt} days: move a start.";
        }

        foreach (var found in runs.Where(r => WindowMinutes.Outside(site, r) > 0).GroupBy(r => r.Program.Key))
        {
            yield return $"{found.Key}: outside the watering window at 100 % already, by up to {Words.Minutes(found.Max(r => WindowMinutes.Outside(site, r)))} on {found.Select(r => r.Start.Date).Distinct().Count()} of {DaysLookedAt} days: move a start, or shorten it.";
        }

        var exceeded = new PumpLoad(site, []).Exceeded(runs);
        if (exceeded.Count > 0)
        {
            var worst = exceeded.MaxBy(e => e.FlowLPerMin)!;
            var boxes = runs.Where(r => r.Begins < worst.To && r.Finishes > worst.From).Select(r => r.Program.Key.ToString()).Distinct(StringComparer.Ordinal);
            yield return $"pump: at 100 % already the boxes together ask up to {Words.Percent(Math.Round(100 * worst.FlowLPerMin / worst.CapacityLPerMin))} of what it gives, on {exceeded.Select(e => site.Clock.DateOf(e.From)).Distinct().Count()} of {DaysLookedAt} days ({string.Join(", ", boxes)}): move a start.";
        }
    }

    private static IEnumerable<string> Peak(Site site)
    {
        if (site.Weather.Normals is not { } normals)
        {
            yield break;
        }

        var plan = new SitePlan(site);
        foreach (var program in plan.Programs)
        {
            var dates = WaterDates(program.Program, site.Start);
            var zones = plan.ZonesOf(program);
            if (dates.Count < 2)
            {
                continue;
            }

            var apart = dates.Zip(dates.Skip(1), (a, b) => b.DayNumber - a.DayNumber).Max();
            var dry = zones.Where(z => z.Programs.Count == 1 && apart * PeakNeed.MmPerDay(z.Station, normals.EtoMmPerDay) > z.AllowableMm + Tolerance)
                .Select(z => (Zone: z, Draws: apart * PeakNeed.MmPerDay(z.Station, normals.EtoMmPerDay)))
                .ToList();
            if (dry.Count > 0)
            {
                var (worst, draws) = dry.MaxBy(d => d.Draws / d.Zone.AllowableMm);
                yield return $"{program.Key}: {Days(apart)} from start to start draw {Words.Depth(site.Units, draws)} in the peak month at {worst.Station.Label}{More(dry.Count)}, allowed {Words.Depth(site.Units, worst.AllowableMm)}: more water days, or deeper roots.";
            }

            var weak = zones.Where(z => WeekMm(z, site.Start) + Tolerance < 7 * PeakNeed.MmPerDay(z.Station, normals.EtoMmPerDay)).ToList();
            if (weak.Count > 0)
            {
                var worst = weak.MinBy(z => WeekMm(z, site.Start) / PeakNeed.MmPerDay(z.Station, normals.EtoMmPerDay))!;
                yield return $"{program.Key}: even at {Words.Percent(program.Controller.PercentMax)} a week gives {Words.Depth(site.Units, WeekMm(worst, site.Start))} of the {Words.Depth(site.Units, 7 * PeakNeed.MmPerDay(worst.Station, normals.EtoMmPerDay))} that {worst.Station.Label}{More(weak.Count)} draws in the peak month: longer base minutes, or more starts.";
            }
        }
    }

    /// <summary>Net water of a week at the end of the dial, by all programs of a station, mm; drainage not counted.</summary>
    private static double WeekMm(ZonePlan zone, DateOnly from) => zone.Programs.Sum(p =>
        zone.Net.DepthMm(RunMinutes.At(p.Program.Controller, p.BaseMinutes, p.Program.Controller.PercentMax)) * p.Program.Program.Starts.Count * WaterDates(p.Program.Program, from).Count * 7.0 / DaysLookedAt);

    private static List<DateOnly> WaterDates(WateringProgram program, DateOnly from) =>
        [.. Enumerable.Range(0, DaysLookedAt).Select(i => from.AddDays(i)).Where(program.Days.Includes)];

    private static string Days(int count) => count == 1 ? "1 day" : FormattableString.Invariant($"{count} days");

    private static string More(int count) => count > 1 ? FormattableString.Invariant($" and {count - 1} more") : "";
}
