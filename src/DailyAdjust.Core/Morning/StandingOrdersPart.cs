using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 7 of the sheet: what holds, and when each ends.</summary>
internal static class StandingOrdersPart
{
    public static IReadOnlyList<StandingOrder> Of(AdviceContext context, IReadOnlyList<LogEntry> log)
    {
        var clock = context.Site.Clock;
        var orders = new List<StandingOrder>();
        foreach (var group in context.Site.Controllers
            .Select(c => (c.Id, context.Season.At(c.Id, context.AsOf).State))
            .Where(s => !string.Equals(s.State, "open", StringComparison.Ordinal))
            .GroupBy(s => s.State, StringComparer.Ordinal))
        {
            var where = group.Count() == context.Site.Controllers.Count ? "site" : string.Join(", ", group.Select(g => g.Id));
            orders.Add(new StandingOrder(where, $"season {group.Key}", null));
        }

        orders.AddRange(context.Holds.At(context.AsOf).Select(h => new StandingOrder(h.Where.ToString(), h.Reason.Length > 0 ? "hold: " + h.Reason : "hold", h.Until)));
        foreach (var pump in log.Where(e => e.Kind == LogKind.Pump && e.Value is not null && (e.Until is null || e.Until.Value.Instant(clock) > context.AsOf)))
        {
            orders.Add(new StandingOrder("pump", "reduced capacity" + (pump.Note.Length > 0 ? ": " + pump.Note : ""), pump.Until?.Date));
        }

        orders.AddRange(context.Site.Restrictions.Where(r => r.HoldsOn(context.Date)).Select(r => new StandingOrder(
            r.Areas.Count > 0 ? string.Join(", ", r.Areas) : "site", "watering rule: " + r.Name, r.Until)));
        return orders;
    }
}
