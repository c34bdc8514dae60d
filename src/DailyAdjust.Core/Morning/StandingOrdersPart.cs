using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 7 of the sheet: what holds, who said so, and when each ends.</summary>
internal static class StandingOrdersPart
{
    public static IReadOnlyList<StandingOrder> Of(AdviceContext context, IReadOnlyList<LogEntry> log) =>
    [
        .. Seasons(context),
        .. Off(context, context.AsOf, _ => true),
        .. Pauses(context),
        .. context.GrowIns.All.Where(g => g.Ends > context.AsOf).Select(g => Order(g.Program.ToString(), With(new("grow-in"), g.Entry.Note), g.Entry.Until, g.Entry.By) with { Begins = Ahead(context, g.From) }),
        .. Stages(context, log),
        .. log.Where(e => e.Kind == LogKind.Pump && e.Value is not null && (e.Until is null || e.Until.Value.Instant(context.Site.Clock) > context.AsOf))
            .Select(e => Order("pump", With(new("reduced capacity"), e.Note), e.Until, e.By) with { Begins = Ahead(context, e.Time.Begin(context.Site.Clock)) }),
        .. context.Site.Restrictions.Where(r => r.HoldsOn(context.Date))
            .Select(r => new StandingOrder(r.Areas.Count > 0 ? string.Join(", ", r.Areas) : "site", Prohibitions.Named(r), r.Until)),
    ];

    /// <summary>Orders that stop water, in force at an instant or later.</summary>
    public static IEnumerable<StandingOrder> Off(AdviceContext context, DateTimeOffset instant, Func<OffOrder, bool> which) => context.Off.NotOver(instant).Where(which)
        .Select(o => Order(o.Where.ToString(), OrderWords.Of(o), o.Until, o.By) with { Begins = Ahead(context, o.From) });

    private static IEnumerable<StandingOrder> Seasons(AdviceContext context)
    {
        foreach (var group in context.Site.Controllers
            .Where(c => !context.Season.IsOpen(c.Id, context.AsOf))
            .Select(c => (c.Id, context.Season.At(c.Id, context.AsOf).State))
            .GroupBy(s => s.State, StringComparer.Ordinal))
        {
            var where = group.Count() == context.Site.Controllers.Count ? "site" : string.Join(", ", group.Select(g => g.Id));
            yield return new StandingOrder(where, new($"season {group.Key}"), null);
        }
    }

    private static IEnumerable<StandingOrder> Stages(AdviceContext context, IReadOnlyList<LogEntry> log) =>
        StageHistory.Of(log).Where(s => s.Last is null || s.Last >= context.Date).Select(s => new StandingOrder("site", With($"drought plan, {s.Name}", s.Entry.Note), s.Last)
        {
            By = s.Entry.By,
            Begins = s.First > context.Date ? context.Site.Clock.DayStart(s.First) : null,
        });

    /// <summary>One line where all programs of a box, or of the site, are paused by one entry.</summary>
    private static IEnumerable<StandingOrder> Pauses(AdviceContext context)
    {
        var programs = context.Programs.Select(p => (p.Key, Now: context.Settings.At(p.Key, context.AsOf))).ToList();
        foreach (var pause in programs.Where(p => p.Now.PausedUntil is not null).GroupBy(p => (Until: p.Now.PausedUntil!.Value, Entry: p.Now.PausedBy)))
        {
            var order = Order("", With(new("paused, runs by itself again"), pause.Key.Entry?.Note ?? ""), At(context, pause.Key.Until), pause.Key.Entry?.By ?? "");
            if (pause.Count() == programs.Count)
            {
                yield return order with { Where = "site" };
                continue;
            }

            foreach (var box in pause.GroupBy(p => p.Key.Controller, StringComparer.Ordinal))
            {
                var isWhole = box.Count() == programs.Count(p => string.Equals(p.Key.Controller, box.Key, StringComparison.Ordinal));
                foreach (var where in isWhole ? [box.Key] : box.Select(p => p.Key.ToString()))
                {
                    yield return order with { Where = where };
                }
            }
        }
    }

    /// <summary>Null = it has begun.</summary>
    private static DateTimeOffset? Ahead(AdviceContext context, DateTimeOffset begins) => begins > context.AsOf ? begins : null;

    private static LogTime At(AdviceContext context, DateTimeOffset instant)
    {
        var local = context.Site.Clock.ToLocal(instant).DateTime;
        return new LogTime(DateOnly.FromDateTime(local), TimeOnly.FromDateTime(local));
    }

    private static StandingOrder Order(string where, Phrase what, LogTime? until, string by) => new(where, what, until?.Date) { UntilClock = until?.Clock, By = by };

    private static Phrase With(Phrase what, string note) => note.Length > 0 ? $"{what}: {note}" : what;
}
