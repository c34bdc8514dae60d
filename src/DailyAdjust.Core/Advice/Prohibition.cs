using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Why a program must not run.</summary>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">The last date; null = open.</param>
internal sealed record Prohibition(string Why, DateOnly? Until);

/// <summary>Season, holds and the place's watering rules, for one program and one visit.</summary>
internal static class Prohibitions
{
    /// <summary>Season closed or a hold over the program when it would next start (else when the round is to be done); null = none.</summary>
    public static Prohibition? SeasonOrHold(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var (state, since) = context.Season.At(program.Key.Controller, context.AsOf);
        if (!string.Equals(state, "open", StringComparison.Ordinal))
        {
            var from = since is { } s ? " since " + Words.Date(context.Site.Clock.DateOf(s)) : "";
            return new Prohibition($"the season is {state}{from}", null);
        }

        var when = horizon.Starts.Count > 0 ? horizon.Starts[0].At : horizon.Opens;
        foreach (var hold in context.Holds.At(when))
        {
            if (hold.Where.Covers(program.Key) || HoldsEveryStation(context, program, hold.Where))
            {
                return new Prohibition(hold.Reason.Length > 0 ? $"hold: {hold.Reason}" : "hold", hold.Until);
            }
        }

        return null;
    }

    /// <summary>A watering rule that forbids every start of the horizon; null = none does.</summary>
    public static Prohibition? Restricted(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        foreach (var rule in RulesFor(context, program))
        {
            if (horizon.Starts.All(s => Forbids(context.Site, program.Controller, rule, s)))
            {
                return new Prohibition("watering rule: " + rule.Name, rule.Until);
            }
        }

        return null;
    }

    /// <summary>Starts of the horizon that a watering rule forbids, each with its rule.</summary>
    public static IEnumerable<(ProgramStart Start, Restriction Rule)> ForbiddenStarts(AdviceContext context, PlannedProgram program, Horizon horizon) =>
        from rule in RulesFor(context, program)
        from start in horizon.Starts
        where Forbids(context.Site, program.Controller, rule, start)
        select (start, rule);

    /// <summary>The lowest ceiling on the percentage in the horizon; null = none.</summary>
    public static (double Percent, Restriction Rule)? Ceiling(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var lowest = RulesFor(context, program)
            .Where(r => r.MostPercent is > 0 && horizon.Starts.Any(s => r.HoldsOn(context.Site.Clock.DateOf(s.At))))
            .MinBy(r => r.MostPercent);
        return lowest is null ? null : (lowest.MostPercent!.Value, lowest);
    }

    private static IEnumerable<Restriction> RulesFor(AdviceContext context, PlannedProgram program) =>
        context.Site.Restrictions.Where(r => context.ZonesOf(program).Any(z => r.Covers(z.Station.Area)));

    private static bool Forbids(Site site, Controller controller, Restriction rule, ProgramStart start)
    {
        var local = site.Clock.ToLocal(start.At);
        var date = DateOnly.FromDateTime(local.DateTime);
        if (!rule.HoldsOn(date))
        {
            return false;
        }

        // A ceiling below the smallest number of the dial can only be kept by not running.
        return (rule.MostPercent is { } most && !DialNumber.HasOneUpTo(controller, most))
            || (rule.DaysNotAllowed?.Includes(date) ?? false)
            || (rule.HoursNotAllowed?.Contains(TimeOnly.FromDateTime(local.DateTime)) ?? false);
    }

    private static bool HoldsEveryStation(AdviceContext context, PlannedProgram program, Place where) =>
        context.ZonesOf(program).All(z => where.Covers(z.Station));
}
