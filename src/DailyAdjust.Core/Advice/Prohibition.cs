using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Why a program must not run.</summary>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">The last date; null = open.</param>
internal sealed record Prohibition(string Why, DateOnly? Until);

/// <summary>Season, orders and the place's watering rules, for one program and one visit.</summary>
internal static class Prohibitions
{
    /// <summary>A season that is not open, or orders over every start to come (without one: over the hour of the round); null = none.</summary>
    public static Prohibition? SeasonOrOrder(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var (state, since) = context.Season.At(program.Key.Controller, context.AsOf);
        if (!string.Equals(state, SeasonState.Open, StringComparison.Ordinal))
        {
            var from = since is { } s ? " since " + Words.Date(context.Site.Clock.DateOf(s)) : "";
            return new Prohibition(
                state switch
                {
                    SeasonState.Closing => $"the system is being closed down{from}",
                    SeasonState.Charging => $"the pipes are being filled{from}",
                    _ => $"the season is {state}{from}",
                },
                null);
        }

        IReadOnlyList<DateTimeOffset> starts = horizon.Starts.Count > 0 ? [.. horizon.Starts.Select(s => s.At)] : [horizon.Opens];
        List<OffOrder> orders = [];
        foreach (var start in starts)
        {
            var hits = OrdersOver(context, program, start).ToList();
            if (hits.Count == 0)
            {
                return null;
            }

            orders.AddRange(hits.Except(orders));
        }

        // Off until the last of them is over.
        var until = orders.Exists(o => o.Until is null) ? null : orders.Max(o => o.Until!.Value.Date) as DateOnly?;
        return new Prohibition(string.Join("; ", orders.Select(OrderWords.Of).Distinct(StringComparer.Ordinal)), until);
    }

    /// <summary>Orders that stop a program's start: those over all of its ground.</summary>
    public static IEnumerable<OffOrder> OrdersOver(AdviceContext context, PlannedProgram program, DateTimeOffset start) =>
        context.Off.At(start).Where(o => o.Where.Covers(program.Key) || CoversEveryStation(context, program, o.Where));

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
        context.Rules.Where(r => context.ZonesOf(program).Any(z => r.Covers(z.Station.Area)));

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

    private static bool CoversEveryStation(AdviceContext context, PlannedProgram program, Place where) =>
        context.ZonesOf(program).All(z => where.Covers(z.Station));
}
