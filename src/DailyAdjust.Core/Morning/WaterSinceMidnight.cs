using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;

namespace DailyAdjust.Core.Morning;

/// <summary>What is known by a morning's instant of the water, and of the probes, that a zone got since midnight.</summary>
internal static class WaterSinceMidnight
{
    /// <summary>In order of time; each with the share of the day's reference ET that is drawn by then.</summary>
    /// <param name="context">The morning.</param>
    /// <param name="zone">The zone.</param>
    /// <param name="before">Starts to come that lie before it run as they are set, UTC; null = only what has run.</param>
    public static List<WaterEvent> Of(AdviceContext context, ZonePlan zone, DateTimeOffset? before = null)
    {
        var day = context.Day(context.Date);
        var events = new List<WaterEvent>();
        context.AddKnown(events, zone);
        foreach (var start in day.StartsAt(zone.Station.Key.Controller))
        {
            if ((start.Start.At <= context.AsOf || start.Start.At < before) && zone.Station.BaseMinutes.TryGetValue(start.Program.Key.Program, out var baseMinutes))
            {
                events.Add(new WaterEvent(start.Start.At, WaterKind.Irrigation, start.DrawnBy, zone.Net.DepthMm(day.MinutesRun(start, zone, baseMinutes))));
            }
        }

        WaterEvent.Sort(events);
        if (context.Drawn is not null)
        {
            WaterEvent.Redraw(events, share => context.ShareDrawn(context.Date, share));
        }

        return events;
    }
}
