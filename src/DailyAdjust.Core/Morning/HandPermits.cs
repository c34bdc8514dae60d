using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>When a station may be run by hand: the season is open, and neither an order nor a watering rule of the place is against it.</summary>
internal sealed class HandPermits(AdviceContext context)
{
    /// <summary>How far ahead anything may change.</summary>
    private static readonly TimeSpan Ahead = TimeSpan.FromHours(24);

    private readonly Dictionary<StationKey, ZonePlan> _zones = context.Zones.ToDictionary(z => z.Station.Key);
    private IReadOnlyList<DateTimeOffset>? _changes;

    /// <summary>Instants from the morning on at which the answer may become another one, ascending, UTC.</summary>
    public IReadOnlyList<DateTimeOffset> Changes => _changes ??= [.. Instants().Where(at => at > context.AsOf && at < context.AsOf + Ahead).Distinct().Order()];

    /// <summary>Whether a station may run through a span.</summary>
    /// <param name="key">Of the site.</param>
    /// <param name="from">UTC.</param>
    /// <param name="to">UTC, excluded.</param>
    public bool May(StationKey key, DateTimeOffset from, DateTimeOffset to) => May(_zones[key], from) && Changes.Where(at => at > from && at < to).All(at => May(_zones[key], at));

    /// <summary>Whether a station may run at an instant.</summary>
    public bool May(ZonePlan zone, DateTimeOffset at)
    {
        var station = zone.Station;
        var start = new ProgramStart(context.Site.Clock.DateOf(at), at);
        return context.Season.IsOpen(station.Key.Controller, at)
            && !context.Off.At(at).Any(order => order.Where.Covers(station))
            && !context.Rules.Any(rule => rule.Covers(station.Area) && Prohibitions.ForbidsTime(context.Site, rule, start))
            && zone.Programs.All(p => Prohibitions.DryRule(context, p.Program, station, start) is null);
    }

    private IEnumerable<DateTimeOffset> Instants()
    {
        foreach (var order in context.Off.NotOver(context.AsOf))
        {
            yield return order.From;
            if (order.Ends is { } ends)
            {
                yield return ends;
            }
        }

        for (var date = context.Date; date <= context.Date.AddDays(1); date = date.AddDays(1))
        {
            yield return context.Site.Clock.DayStart(date);
            foreach (var hours in context.Rules.Select(r => r.HoursNotAllowed).OfType<WateringWindow>())
            {
                yield return context.Site.Clock.ToInstant(date, hours.Opens);
                yield return context.Site.Clock.ToInstant(date, hours.Closes);
            }
        }
    }
}
