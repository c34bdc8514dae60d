using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>Why a program must not run.</summary>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">The last date; null = open.</param>
internal sealed record Prohibition(Phrase Why, DateOnly? Until)
{
    /// <summary>Watering rules that name no end: the date of the program's next start that may run; null = none is in sight, or <see cref="Until"/> says it.</summary>
    public DateOnly? Again { get; init; }

    /// <summary>The hour of <see cref="Until"/> at which it ends; null = it holds through that date.</summary>
    public TimeOnly? UntilClock { get; init; }
}

/// <summary>Season, orders and the place's watering rules, for one program and one visit.</summary>
internal static class Prohibitions
{
    /// <summary>How far ahead a start that may run is looked for, days.</summary>
    private const int DaysAhead = 60;

    /// <summary>
    /// A season that is not open, a hold over the first start to come (without one: over the hour of the round), or orders over every start; null = none.
    /// </summary>
    public static Prohibition? SeasonOrOrder(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var (state, since) = context.Season.At(program.Key.Controller, context.AsOf);
        if (!context.Season.IsOpen(program.Key.Controller, context.AsOf))
        {
            var words = SeasonWords(state);
            return new Prohibition(since is { } s ? $"{words} since {Words.Date(context.Site.Clock.DateOf(s))}" : words, null);
        }

        var first = horizon.Starts.Concat(horizon.TakenOut).Min(s => (DateTimeOffset?)s.At) ?? horizon.Opens;
        if (OrdersOver(context, program, first)
            .Where(o => o.Reason == OffReason.Hold && context.ZonesOf(program).All(z => Stops(o, program, z.Station))).ToList() is { Count: > 0 } holds)
        {
            // A hold speaks of the program, not of single starts: nobody takes starts out of a program that is to stand still.
            return Of(holds);
        }

        List<OffOrder> orders = [];
        foreach (var start in horizon.Starts)
        {
            var hits = OrdersOver(context, program, start.At);
            if (hits.Count == 0)
            {
                return null;
            }

            orders.AddRange(hits.Except(orders));
        }

        return orders.Count > 0 ? Of(orders) : null;
    }

    /// <summary>A state of the season that is not open, as a plain clause.</summary>
    public static Phrase SeasonWords(string state) => state switch
    {
        SeasonState.Closing => new("the system is being closed down"),
        SeasonState.Charging => new("the pipes are being filled"),
        SeasonState.Closed => new("the season is closed"),
        SeasonState.Drained => new("the season is drained"),
        _ => $"the season is {state}",
    };

    /// <summary>Off until the last of them is over.</summary>
    private static Prohibition Of(List<OffOrder> orders)
    {
        var last = orders.Exists(o => o.Until is null) ? null : orders.Select(o => o.Until!.Value).MaxBy(u => (u.Date, u.Clock ?? TimeOnly.MaxValue)) as LogTime?;
        return new Prohibition(Phrase.Join("; ", orders.Select(OrderWords.Of).Distinct()), last?.Date) { UntilClock = last?.Clock };
    }

    /// <summary>Orders that stop a program's start: one over all of its ground, else those that take all of it together; none = it may run.</summary>
    public static IReadOnlyList<OffOrder> OrdersOver(AdviceContext context, PlannedProgram program, DateTimeOffset start)
    {
        if (context.Off.IsEmpty)
        {
            return [];
        }

        var zones = context.ZonesOf(program);
        var here = context.Off.At(start).Where(o => zones.Any(z => Stops(o, program, z.Station))).ToList();
        var alone = here.Where(o => zones.All(z => Stops(o, program, z.Station))).ToList();
        return alone.Count > 0 ? alone : zones.All(z => here.Exists(o => Stops(o, program, z.Station))) ? here : [];
    }

    /// <summary>Whether an order keeps a station from running in a program's starts.</summary>
    public static bool Stops(OffOrder order, PlannedProgram program, Station station) =>
        order.Where.Kind == PlaceKind.Program ? order.Where.Covers(program.Key) : order.Where.Covers(station);

    /// <summary>Watering rules that, alone or with orders, forbid every start of the horizon; null = they do not.</summary>
    public static Prohibition? Restricted(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        List<(Phrase Why, DateOnly? Until)> found = [];
        foreach (var start in horizon.Starts)
        {
            if (OrdersOver(context, program, start.At) is { Count: > 0 } orders)
            {
                found.Add((OrderWords.Of(orders[0]), orders[0].Until?.Date));
            }
            else if (RulesOver(context, program, start) is { Count: > 0 } rules)
            {
                found.Add((Named(rules), Ends(rules)));
            }
            else
            {
                return null;
            }
        }

        var why = Phrase.Join("; ", found.Select(f => f.Why).Distinct());
        // A rule of days leaves starts between its dates, whatever its own end is.
        var last = found.Exists(f => f.Until is null) ? null : found.Max(f => f.Until);
        var again = NextThatMayRun(context, program, horizon.Starts[^1]);
        return last is null || again <= last ? new Prohibition(why, again?.AddDays(-1)) { Again = again } : new Prohibition(why, last);
    }

    /// <summary>The date of the first start after another that neither orders nor watering rules forbid; null = there is none in the days looked at.</summary>
    private static DateOnly? NextThatMayRun(AdviceContext context, PlannedProgram program, ProgramStart last) => context.StartsOf(program, last.At)
        .Select(s => s.Start)
        .TakeWhile(s => s.Date <= last.Date.AddDays(DaysAhead))
        .Where(s => s.At > last.At && OrdersOver(context, program, s.At).Count == 0 && RulesOver(context, program, s).Count == 0)
        .Select(s => (DateOnly?)context.Site.Clock.DateOf(s.At))
        .FirstOrDefault();

    /// <summary>Whether season, orders and watering rules leave a visit no start to run.</summary>
    public static bool ForbidsAll(AdviceContext context, PlannedProgram program, Horizon horizon) =>
        SeasonOrOrder(context, program, horizon) is not null || horizon.Starts.All(s => OrdersOver(context, program, s.At).Count > 0 || RulesOver(context, program, s).Count > 0);

    /// <summary>The watering rules that, alone, together or with orders, forbid a start to all of the program's ground: one over all of it, else each that takes a part; empty = it may run.</summary>
    public static IReadOnlyList<Restriction> RulesOver(AdviceContext context, PlannedProgram program, ProgramStart start)
    {
        if (context.Rules.Count == 0)
        {
            return [];
        }

        var zones = context.ZonesOf(program);
        var rules = zones.Select(z => RuleOver(context, program, z.Station, start)).ToList();
        if (!rules.Exists(r => r is not null) || !zones.Zip(rules).All(x => x.Second is not null || context.Off.At(start.At).Any(o => Stops(o, program, x.First.Station))))
        {
            return [];
        }

        return context.Rules.FirstOrDefault(r => ForbidsTime(context.Site, r, start) && zones.All(z => r.Covers(z.Station.Area))) is { } one ? [one] : [.. rules.OfType<Restriction>().Distinct()];
    }

    /// <summary>When the first of them ends: then a part may run; null = none names an end.</summary>
    public static DateOnly? Ends(IReadOnlyList<Restriction> together) => together.Min(r => r.Until);

    /// <summary>The watering rule that forbids a start to one of its stations, by its days, its hours or a ceiling of nothing; null = none does.</summary>
    public static Restriction? RuleOver(AdviceContext context, PlannedProgram program, Station station, ProgramStart start) =>
        context.Rules.FirstOrDefault(r => r.Covers(station.Area) && ForbidsTime(context.Site, r, start)) ?? DryRule(context, program, station, start);

    /// <summary>Whether a start that is moved comes where a watering rule forbids it to a station to which its present hour is not forbidden.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="program">Which.</param>
    /// <param name="moved">The start where it would come.</param>
    /// <param name="present">When it comes now, UTC.</param>
    public static bool IsForbiddenMore(AdviceContext context, PlannedProgram program, ProgramStart moved, DateTimeOffset present)
    {
        var now = new ProgramStart(context.Site.Clock.DateOf(present), present);
        return context.Rules.Count > 0 && context.ZonesOf(program).Any(z => RuleOver(context, program, z.Station, moved) is not null && RuleOver(context, program, z.Station, now) is null);
    }

    /// <summary>The rule whose ceiling keeps a station from running: no number of the dial is so low; null = none does.</summary>
    public static Restriction? DryRule(AdviceContext context, PlannedProgram program, Station station, ProgramStart start) => context.Rules.FirstOrDefault(r =>
        r.MostPercent is { } most && r.Covers(station.Area) && !DialNumber.HasOneUpTo(program.Controller, most) && r.HoldsOn(context.Site.Clock.DateOf(start.At)));

    /// <summary>The lowest ceiling on the percentage in the horizon that the dial can keep; null = none.</summary>
    public static (double Percent, Restriction Rule)? Ceiling(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var lowest = RulesFor(context, program)
            .Where(r => r.MostPercent is { } most && DialNumber.HasOneUpTo(program.Controller, most) && horizon.Starts.Any(s => r.HoldsOn(context.Site.Clock.DateOf(s.At))))
            .MinBy(r => r.MostPercent);
        return lowest is null ? null : (lowest.MostPercent!.Value, lowest);
    }

    public static Phrase Named(Restriction rule) => $"watering rule: {rule.Name}";

    public static Phrase Named(IReadOnlyList<Restriction> rules) =>
        rules.Count == 1 ? Named(rules[0]) : $"watering rules: {Words.List([.. rules.Select(r => Phrase.Verbatim(r.Name))])}";

    /// <summary>Watering rules over any of the program's ground.</summary>
    public static IEnumerable<Restriction> RulesFor(AdviceContext context, PlannedProgram program) =>
        context.Rules.Where(r => context.ZonesOf(program).Any(z => r.Covers(z.Station.Area)));

    /// <summary>Whether a watering rule forbids a start at that hour.</summary>
    public static bool ForbidsTime(Site site, Restriction rule, ProgramStart start)
    {
        var local = site.Clock.ToLocal(start.At);
        var date = DateOnly.FromDateTime(local.DateTime);
        return rule.HoldsOn(date)
            && ((rule.DaysNotAllowed?.Includes(date) ?? false) || (rule.HoursNotAllowed?.Contains(TimeOnly.FromDateTime(local.DateTime)) ?? false));
    }
}
