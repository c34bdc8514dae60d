using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A start that must not run though the program's others may.</summary>
/// <param name="At">UTC.</param>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">When the order ends; null = open.</param>
public sealed record TakenOutStart(DateTimeOffset At, Phrase Why, LogTime? Until);

/// <summary>Stations that must not run though the program's others may.</summary>
/// <param name="Stations">In the controller's order.</param>
/// <param name="From">The first start for which that holds, UTC.</param>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">When the order ends; null = open.</param>
public sealed record TakenOutStations(IReadOnlyList<StationKey> Stations, DateTimeOffset From, Phrase Why, LogTime? Until);

/// <summary>What orders and watering rules take out of a horizon when they do not stop all of it.</summary>
internal static class OrderHits
{
    /// <summary>How far ahead the end of a rule's dry starts is looked for.</summary>
    private static readonly TimeSpan LookedAhead = TimeSpan.FromDays(62);

    /// <summary>Starts that must not run, each for the first reason.</summary>
    public static IReadOnlyList<TakenOutStart> Starts(AdviceContext context, PlannedProgram program, Horizon horizon) =>
        [.. horizon.Starts.Select(s => Out(context, program, s)).OfType<TakenOutStart>()];

    /// <summary>Stations that must not run though others of the program may, one line for each order or rule.</summary>
    public static IReadOnlyList<TakenOutStations> Stations(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var found = new List<TakenOutStations>();
        var seen = new HashSet<object>(ReferenceEqualityComparer.Instance);
        var zones = context.ZonesOf(program);
        foreach (var start in horizon.Starts.Where(s => Out(context, program, s) is null))
        {
            foreach (var order in context.Off.At(start.At).Where(seen.Add))
            {
                Add(start, z => Prohibitions.Stops(order, program, z), OrderWords.Of(order), order.Until);
            }

            foreach (var rule in zones.Select(z => Prohibitions.RuleOver(context, program, z.Station, start)).OfType<Restriction>().Where(seen.Add))
            {
                Add(start, z => rule.Covers(z.Area), Prohibitions.Named(rule), Whole(LastOf(context, program, rule, start)));
            }
        }

        return found;

        void Add(ProgramStart start, Func<Station, bool> isOut, Phrase why, LogTime? until)
        {
            IReadOnlyList<StationKey> stations = [.. zones.Where(z => isOut(z.Station)).Select(z => z.Station.Key)];
            if (stations.Count > 0)
            {
                found.Add(new TakenOutStations(stations, start.At, why, until));
            }
        }
    }

    /// <summary>Stations that must not run in a start though others of the program may, in the controller's order; empty where none or all must not.</summary>
    public static IReadOnlyList<StationKey> StationsOf(AdviceContext context, PlannedProgram program, ProgramStart start)
    {
        if (context.Off.IsEmpty && context.Rules.Count == 0)
        {
            return [];
        }

        var zones = context.ZonesOf(program);
        List<StationKey> stations = [.. zones.Where(z => MustNotRun(context, program, z.Station, start)).Select(z => z.Station.Key)];
        return stations.Count == zones.Count ? [] : stations;
    }

    /// <summary>The zones for which a number is made: without those that must not run in any start of the horizon. All, where none is left.</summary>
    public static IReadOnlyList<ZonePlan> ZonesThatRun(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var zones = context.ZonesOf(program);
        if (context.Off.IsEmpty && context.Rules.Count == 0)
        {
            return zones;
        }

        List<ZonePlan> run = [.. zones.Where(z => !horizon.Starts.All(s => MustNotRun(context, program, z.Station, s)))];
        return run.Count == 0 ? zones : run;
    }

    private static bool MustNotRun(AdviceContext context, PlannedProgram program, Station station, ProgramStart start) =>
        context.Off.At(start.At).Any(o => Prohibitions.Stops(o, program, station)) || Prohibitions.RuleOver(context, program, station, start) is not null;

    private static TakenOutStart? Out(AdviceContext context, PlannedProgram program, ProgramStart start)
    {
        if (Prohibitions.OrdersOver(context, program, start.At) is { Count: > 0 } orders)
        {
            return new TakenOutStart(start.At, OrderWords.Of(orders[0]), orders[0].Until);
        }

        return Prohibitions.RulesOver(context, program, start) is { Count: > 0 } rules ? new TakenOutStart(start.At, Prohibitions.Named(rules), Whole(Prohibitions.Ends(rules))) : null;
    }

    /// <summary>The date of the last of the starts, from one on without a break, that a rule is against; the rule's own end where there is no such break in sight.</summary>
    private static DateOnly? LastOf(AdviceContext context, PlannedProgram program, Restriction rule, ProgramStart first)
    {
        if (rule.MostPercent is not null)
        {
            return rule.Until;
        }

        var last = first.Date;
        foreach (var start in context.StartsOf(program, first.At).TakeWhile(s => s.Start.At <= first.At + LookedAhead).Select(s => s.Start))
        {
            if (!Prohibitions.ForbidsTime(context.Site, rule, start))
            {
                return last;
            }

            last = start.Date;
        }

        return rule.Until;
    }

    private static LogTime? Whole(DateOnly? date) => date is { } day ? new LogTime(day, null) : null;
}
