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
    private static readonly PlaceKind[] WidestFirst = [PlaceKind.Site, PlaceKind.Pump, PlaceKind.Controller];

    /// <summary>Of the site's meter, else of the pump's, else of the controllers' together: the same water is not counted twice. Null = no meter tells.</summary>
    /// <param name="log">Its `meter` entries.</param>
    /// <param name="from">The first date.</param>
    /// <param name="to">The last.</param>
    public static MeteredWater? Between(IReadOnlyList<LogEntry> log, DateOnly from, DateOnly to) =>
        WidestFirst.Select(kind => Sum(Of(log, kind, from, to))).FirstOrDefault(water => water is not null);

    /// <summary>
    /// The same span from reading to reading, of the same meters, by the dates of the readings that end the steps: together they are the whole. A step in which a total fell
    /// (the meter was changed, or a reading is wrong) is below 0.
    /// </summary>
    public static IReadOnlyList<MeteredWater> Steps(IReadOnlyList<LogEntry> log, DateOnly from, DateOnly to)
    {
        var told = WidestFirst.Select(kind => Of(log, kind, from, to)).Where(meters => meters.Count > 0).ToList();
        var widest = told.Find(meters => Sum(meters) is not null) ?? told.FirstOrDefault() ?? [];
        return [.. widest.SelectMany(readings => readings.Zip(readings.Skip(1), Step)).OrderBy(s => s.To).ThenBy(s => s.From)];
    }

    private static MeteredWater? Sum(IReadOnlyList<List<LogEntry>> meters)
    {
        List<MeteredWater> grown = [.. meters.Select(readings => Step(readings[0], readings[^1])).Where(m => m.Litres >= 0)];
        return grown.Count == 0 ? null : new MeteredWater(grown.Min(m => m.From), grown.Max(m => m.To), grown.Sum(m => m.Litres));
    }

    /// <summary>A meter shows a running total: what was used is its last reading less the last one before the span (else the span's first). Meters with two readings or more.</summary>
    private static IReadOnlyList<List<LogEntry>> Of(IReadOnlyList<LogEntry> log, PlaceKind kind, DateOnly from, DateOnly to) =>
    [
        .. log
            .Where(e => e.Kind == LogKind.Meter && e.Where.Kind == kind && e.Value is not null && e.Time.Date <= to)
            .GroupBy(e => e.Where)
            .Select(meter => meter.OrderBy(e => e.Time).ToList())
            .Select(readings => readings[Math.Max(0, readings.FindLastIndex(e => e.Time.Date < from))..])
            .Where(readings => readings.Count > 1 && readings[^1].Time.Date >= from),
    ];

    private static MeteredWater Step(LogEntry first, LogEntry last) => new(first.Time.Date, last.Time.Date, last.Value!.Value - first.Value!.Value);
}
