using DailyAdjust.Core.Plan;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Reports.Words;

/// <summary>What a plan for the peak month has to say beside its table: what cannot fit, and what to mind.</summary>
public static class PlanWords
{
    private const double Tolerance = 1e-9;

    public const string Caution = "Advice: local watering rules and licensed practice come first. Lock out the power before you open a controller or the pump.";

    public static IReadOnlyList<string> Of(Site site, PlanResult plan)
    {
        var words = SiteWords.Of(site);
        return
        [
            .. plan.WindowAssumed ? [$"site.yaml has no window: {Window(plan)} is taken."] : Array.Empty<string>(),
            .. Supply(NightSupply.Of(site, plan), plan, words),
            .. plan.Programs.SelectMany(p => Program(p, plan, words)),
            .. Flows(site),
        ];
    }

    private static string Window(PlanResult plan) => $"{SiteWords.Clock(plan.Window.Opens)} to {SiteWords.Clock(plan.Window.Closes)}";

    private static IEnumerable<string> Supply(NightSupply? supply, PlanResult plan, SiteWords words)
    {
        if (supply is { Suffices: false, CapacityLPerMin: { } capacity, GivesMm: { } gives, HoursNeeded: { } hours })
        {
            yield return $"A full refill does not fit the night: {words.Flow(capacity)} from {Window(plan)} are {words.DepthOf(gives)} on all ground, a day of the peak month takes {words.DepthOf(supply.NeedMm)}."
                + $" It would take {Tables.Plain.Fixed(hours, 1)} h, or {words.Flow(supply.CapacityNeededLPerMin)}.";
        }
    }

    private static IEnumerable<string> Program(ProgramPlan program, PlanResult plan, SiteWords words)
    {
        var dry = program.Stations.Where(s => s.NeedMm > s.Station.Area.AllowableDepletionMm + Tolerance).ToList();
        if (dry.Count > 0)
        {
            var worst = dry.MaxBy(s => s.NeedMm / s.Station.Area.AllowableDepletionMm)!;
            yield return $"{program.Key}: from water day to water day {worst.Station.Label}{More(dry.Count)} draws {words.DepthOf(worst.NeedMm)}, allowed {words.DepthOf(worst.Station.Area.AllowableDepletionMm)}: more water days, or deeper roots.";
        }

        if (program.Stations.Where(s => s.LongestMinutes is not null).MinBy(s => s.LongestMinutes) is { LongestMinutes: { } longest } split)
        {
            yield return $"{program.Key}: {SiteWords.Count(program.StartsNeeded)} starts a water day, {SiteWords.Minutes(program.Stations.Max(s => s.SoakMinutes))} between the end of a station's run and its next one:"
                + $" water would run off {split.Station.Label} after {SiteWords.Minutes(longest)}.";
        }

        if (program.PercentThatFits < 100)
        {
            var worst = program.Stations.MaxBy(s => program.Short(s).DepthMm)!;
            var (depth, minutes) = program.Short(worst);
            yield return (program.PercentThatFits > 0
                    ? $"{program.Key}: only {SiteWords.Percent(program.PercentThatFits)} of its minutes fit from {Window(plan)}, beside the other programs of its box and within the pump"
                    : $"{program.Key}: no start of it fits from {Window(plan)}, beside the other programs of its box and within the pump")
                + $": a water day is short by {words.DepthOf(depth)}, {SiteWords.Minutes(minutes)}, at {worst.Station.Label}{More(program.Stations.Count)}.";
        }
    }

    private static IEnumerable<string> Flows(Site site)
    {
        var unknown = site.Stations.Count(s => s.FlowLPerMin is null);
        if (site.PumpCapacityLPerMin is not null && unknown > 0)
        {
            yield return $"The pump was not checked for {CommonWords.Count(unknown, "station", "stations")} whose flow is not in stations.csv.";
        }
    }

    private static string More(int count) => count > 1 ? $" and {SiteWords.Count(count - 1)} more" : "";
}
