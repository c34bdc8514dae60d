using DailyAdjust.Core.Advice;

namespace DailyAdjust.Core.Explain;

/// <summary>From the zones' percentages to the program's.</summary>
internal static class AreaSteps
{
    public static Section Of(ProgramCase program, string title)
    {
        var (need, satisfy) = (program.Need!, program.Context.Site.Report.Satisfy);
        var ground = ProgramNeed.GroundOf(need.Zones);
        var byGround = need.Zones.All(z => z.Zone.Station.GroundM2 is > 0);
        List<Step> steps = [Step.Said(byGround ? "Ground counts by m2." : "Every station counts 1: the ground of one is not known.")];
        List<Term> areas = [];
        foreach (var area in need.Zones.GroupBy(z => z.Zone.Station.Area.Name, StringComparer.Ordinal))
        {
            List<ZoneNeed> all = [.. area], rest = [.. all.Where(z => !need.SetAside.Contains(z))];
            steps.Add(Step.Said($"{area.Key}: " + string.Join(", ", all.OrderBy(z => z.Percent).Select(z => $"{z.Zone.Station.Key} {Step.Number(z.Percent)} % ({Step.Number(ground(z))})"))));
            Term median = new("median", ProgramNeed.Meeting(all, ground, 0.5)), limit = new("limit", ProgramNeed.MuchMore * median.Value);
            Meets(steps, all, ground, 0.5, median, "median: smallest percentage that meets half of the ground");
            steps.Add(Step.Of("much more than that", "limit", "1.25 * {median}", limit.Value, "%", "common practice", median));
            SetAside(steps, need, all, ground, limit.Value);
            Term percent = new(FormattableString.Invariant($"area{areas.Count + 1}"), ProgramNeed.Meeting(rest, ground, satisfy));
            Meets(steps, rest, ground, satisfy, percent, $"{area.Key} needs: smallest percentage that meets {Step.Number(100 * satisfy)} % of the rest");
            steps.Add(Share("ground of the rest that can wait", "waits", rest.Where(z => z.CanWait), rest, ground));
            steps.Add(Share("ground of the rest that is not due", "notdue", rest.Where(z => !z.Due), rest, ground));
            areas.Add(percent);
        }

        steps.Add(Step.Of(
            "the program needs the largest of its areas", "exact", areas.Count == 1 ? "{area1}" : $"max({string.Join(", ", areas.Select(a => "{" + a.Symbol + "}"))})", need.ExactPercent, "%", "", areas));
        steps.Add(Step.Said($"can wait: {ZoneNeedSteps.Yes(need.CanWait)} (every area, by {Step.Number(satisfy)} of its rest); due: {ZoneNeedSteps.Yes(need.Due)}"));
        return new Section(title, steps);
    }

    /// <summary>The share that the percentage meets, and that the next smaller one does not.</summary>
    private static void Meets(List<Step> steps, List<ZoneNeed> zones, Func<ZoneNeed, double> ground, double share, Term percent, string name)
    {
        steps.Add(Step.Given(name, percent.Symbol, percent.Value, "%", Step.Number(share) + " or more of the ground"));
        steps.Add(Share($"ground met at {Step.Number(percent.Value)} %", "met", zones.Where(z => z.Percent <= percent.Value), zones, ground));
        if (zones.Exists(z => z.Percent < percent.Value))
        {
            var less = zones.Where(z => z.Percent < percent.Value).Max(z => z.Percent);
            steps.Add(Share($"ground met at {Step.Number(less)} %", "met", zones.Where(z => z.Percent <= less), zones, ground));
        }
    }

    private static void SetAside(List<Step> steps, ProgramNeed need, List<ZoneNeed> all, Func<ZoneNeed, double> ground, double limit)
    {
        List<ZoneNeed> aside = [];
        foreach (var zone in all.OrderByDescending(z => z.Percent))
        {
            if (zone.Percent <= limit)
            {
                steps.Add(Step.Said($"{zone.Zone.Station.Key} needs {Step.Number(zone.Percent)} %, no more than the limit: nothing {(aside.Count > 0 ? "else " : "")}is set aside"));
                return;
            }

            steps.Add(Share($"ground set aside with {zone.Zone.Station.Key}, a third at most", "aside", aside.Append(zone), all, ground));
            if (!need.SetAside.Contains(zone))
            {
                steps.Add(Step.Said($"{zone.Zone.Station.Key} stays in: more than a third would be set aside"));
                return;
            }

            steps.Add(Step.Said($"{zone.Zone.Station.Key} is set aside: it needs {Step.Number(zone.Percent)} %"));
            aside.Add(zone);
        }
    }

    private static Step Share(string name, string symbol, IEnumerable<ZoneNeed> some, IReadOnlyList<ZoneNeed> all, Func<ZoneNeed, double> ground)
    {
        Term[] part = [.. some.Select((z, i) => new Term(FormattableString.Invariant($"g{i + 1}"), ground(z)))];
        var whole = new Term("ground", all.Sum(ground));
        return part.Length == 0
            ? Step.Given(name, symbol, 0, "", "none")
            : Step.Of(name, symbol, $"({string.Join(" + ", part.Select(t => "{" + t.Symbol + "}"))}) / {{ground}}", part.Sum(t => t.Value) / whole.Value, "", "", [.. part, whole]);
    }
}
