using DailyAdjust.Core.Logbook;

namespace DailyAdjust.Core.Water;

/// <summary>What went through meters from one reading to another.</summary>
/// <param name="From">The date of the first reading.</param>
/// <param name="To">The date of the last.</param>
/// <param name="Litres">Between them.</param>
public sealed record MeteredWater(DateOnly From, DateOnly To, double Litres);

/// <summary>Metered water: from people's readings of running totals.</summary>
internal static class Meters
{
    /// <summary>Of the site's meter, else of the pump's, else of the controllers' together: the same water is not counted twice. Null = no meter tells.</summary>
    /// <param name="log">Its `meter` entries.</param>
    /// <param name="from">The first date.</param>
    /// <param name="to">The last.</param>
    public static MeteredWater? Between(IReadOnlyList<LogEntry> log, DateOnly from, DateOnly to)
    {
        var meters = log
            .Where(e => e.Kind == LogKind.Meter && e.Value is not null && e.Time.Date <= to)
            .GroupBy(e => e.Where)
            .Select(meter => (meter.Key.Kind, Water: Of([.. meter.OrderBy(e => e.Time)], from)))
            .Where(meter => meter.Water is not null)
            .ToLookup(meter => meter.Kind, meter => meter.Water!);
        PlaceKind[] widestFirst = [PlaceKind.Site, PlaceKind.Pump, PlaceKind.Controller];
        foreach (var kind in widestFirst.Where(meters.Contains))
        {
            return new MeteredWater(meters[kind].Min(m => m.From), meters[kind].Max(m => m.To), meters[kind].Sum(m => m.Litres));
        }

        return null;
    }

    /// <summary>A meter shows a running total: what was used is its last reading less the last one before the span (else the span's first).</summary>
    private static MeteredWater? Of(List<LogEntry> readings, DateOnly from)
    {
        var first = readings.LastOrDefault(e => e.Time.Date < from) ?? readings.FirstOrDefault();
        var last = readings.LastOrDefault();
        return first is null || last is null || ReferenceEquals(first, last) || last.Time.Date < from || last.Value < first.Value
            ? null
            : new MeteredWater(first.Time.Date, last.Time.Date, last.Value!.Value - first.Value!.Value);
    }
}
