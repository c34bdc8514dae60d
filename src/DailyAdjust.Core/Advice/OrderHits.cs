using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>A start that must not run though the program's others may.</summary>
/// <param name="At">UTC.</param>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">When the order ends; null = open.</param>
public sealed record TakenOutStart(DateTimeOffset At, string Why, LogTime? Until);

/// <summary>Stations that must not run though the program's others may.</summary>
/// <param name="Stations">In the controller's order.</param>
/// <param name="From">The first start for which that holds, UTC.</param>
/// <param name="Why">A plain clause.</param>
/// <param name="Until">When the order ends; null = open.</param>
public sealed record TakenOutStations(IReadOnlyList<StationKey> Stations, DateTimeOffset From, string Why, LogTime? Until);

/// <summary>What orders take out of a horizon when they do not stop all of it.</summary>
internal static class OrderHits
{
    /// <summary>Starts that orders over the whole program hit; none where they hit every one: then the program is off.</summary>
    public static IReadOnlyList<(ProgramStart Start, OffOrder Order)> Starts(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var hit = horizon.Starts
            .Select(s => (Start: s, Order: Prohibitions.OrdersOver(context, program, s.At).FirstOrDefault()))
            .Where(h => h.Order is not null)
            .Select(h => (h.Start, h.Order!))
            .ToList();
        return hit.Count < horizon.Starts.Count ? hit : [];
    }

    /// <summary>Stations that orders over a part of the program's ground hit, one for each order.</summary>
    public static IReadOnlyList<TakenOutStations> Stations(AdviceContext context, PlannedProgram program, Horizon horizon)
    {
        var found = new List<TakenOutStations>();
        var seen = new HashSet<OffOrder>();
        foreach (var start in horizon.Starts)
        {
            var whole = Prohibitions.OrdersOver(context, program, start.At).ToHashSet();
            foreach (var order in context.Off.At(start.At).Where(o => !whole.Contains(o) && !seen.Contains(o)))
            {
                IReadOnlyList<StationKey> stations = [.. context.ZonesOf(program).Where(z => order.Where.Covers(z.Station)).Select(z => z.Station.Key)];
                if (stations.Count > 0 && order.Where.Kind is not PlaceKind.Program)
                {
                    seen.Add(order);
                    found.Add(new TakenOutStations(stations, start.At, OrderWords.Of(order), order.Until));
                }
            }
        }

        return found;
    }
}
