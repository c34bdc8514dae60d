using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Morning;

/// <summary>Part 12 of the sheet: water used, estimated from minutes and flow, and metered, each by itself.</summary>
internal static class WaterPart
{
    public static WaterUsed Of(AdviceContext context, IReadOnlyList<ZoneDay> days, IReadOnlyList<LogEntry> log)
    {
        var flow = context.Site.Stations.ToDictionary(s => s.Key, s => s.FlowLPerMin);
        var month = new DateOnly(context.Date.Year, context.Date.Month, 1);
        var year = new DateOnly(context.Date.Year, 1, 1);
        double Litres(Func<ZoneDay, bool> which) => days.Where(which).Sum(d => d.MinutesRun * (flow.GetValueOrDefault(d.Station) ?? 0));
        return new WaterUsed(
            Litres(d => d.Date == context.Date.AddDays(-1)),
            Litres(d => d.Date >= month),
            Litres(d => d.Date >= year),
            Metered(log, month),
            context.Site.Stations.Count(s => s.FlowLPerMin is null))
        {
            SeasonFrom = days.Count == 0 ? null : days[0].Date > year ? days[0].Date : year,
        };
    }

    /// <summary>Of the site's meter, else of the pump's, else of the controllers' together: the same water is not counted twice. Null = no meter tells.</summary>
    private static double? Metered(IReadOnlyList<LogEntry> log, DateOnly month)
    {
        var meters = log
            .Where(e => e.Kind == LogKind.Meter && e.Value is not null)
            .GroupBy(e => e.Where)
            .Select(meter => (meter.Key.Kind, Litres: MonthOf([.. meter.OrderBy(e => e.Time)], month)))
            .Where(meter => meter.Litres is not null)
            .ToLookup(meter => meter.Kind, meter => meter.Litres!.Value);
        PlaceKind[] widestFirst = [PlaceKind.Site, PlaceKind.Pump, PlaceKind.Controller];
        foreach (var kind in widestFirst.Where(meters.Contains))
        {
            return meters[kind].Sum();
        }

        return null;
    }

    /// <summary>A meter shows a running total: the month's use is its last reading less the last one before the month (else the month's first).</summary>
    private static double? MonthOf(List<LogEntry> readings, DateOnly month)
    {
        var first = readings.LastOrDefault(e => e.Time.Date < month) ?? readings.FirstOrDefault();
        var last = readings.LastOrDefault();
        return first is null || last is null || ReferenceEquals(first, last) || last.Time.Date < month || last.Value < first.Value
            ? null
            : last.Value - first.Value;
    }
}
