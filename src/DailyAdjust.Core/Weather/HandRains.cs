using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>The readings by hand that have a say in the rain of the last days, each beside its instrument.</summary>
public static class HandRains
{
    /// <summary>By gauge in the site's order, then by time; of several totals of one date the last.</summary>
    /// <param name="site">Knows the gauges and the clock.</param>
    /// <param name="first">Readings that end before this date are left out.</param>
    /// <param name="asOf">Nothing of a later instant is used.</param>
    /// <param name="readings">By weather station, ascending, from two days before the first date on.</param>
    /// <param name="log">In order of arrival; voided and superseded entries removed.</param>
    /// <param name="totals">Totals of the running date that count already.</param>
    /// <param name="measuredTo">The last instant of the instruments; null = <paramref name="asOf"/>.</param>
    public static IReadOnlyList<HandRain> Of(
        Site site,
        DateOnly first,
        DateTimeOffset asOf,
        IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings,
        IReadOnlyList<LogEntry> log,
        IReadOnlyList<LogEntry> totals,
        DateTimeOffset? measuredTo = null)
    {
        var begin = site.Clock.DayStart(first);
        return [.. site.Weather.Gauges.SelectMany(gauge =>
        {
            var spans = RainSpan.Of(gauge.Id, log, site.Clock, asOf, totals);
            return spans
                .Where(s => s.To > begin && (s.WholeDate is not { } date || ReferenceEquals(s, spans.Last(t => t.WholeDate == date))))
                .Select(s => Beside(site, gauge, s, spans, measuredTo ?? asOf, readings));
        })];
    }

    private static HandRain Beside(
        Site site, Gauge gauge, RainSpan span, IReadOnlyList<RainSpan> spans, DateTimeOffset asOf, IReadOnlyDictionary<string, IReadOnlyList<Reading>> readings)
    {
        var (clock, bookedTo) = (site.Clock, span.WholeDate ?? site.Clock.DateOf(span.From));
        var lastDate = clock.DateOf(span.To.AddTicks(-1));
        var rain = new HandRain(gauge.Id, span.From, span.To, span.Mm, bookedTo)
        {
            IsWholeDate = span.WholeDate is not null,
            Counts = span.WholeDate is not null || !spans.Any(s => s.WholeDate == bookedTo),
            InTotalOf = span.WholeDate is null && lastDate > bookedTo && spans.Any(s => s.WholeDate == lastDate && s.Mm > 0) && span.Mm > 0 ? lastDate : null,
        };
        if (site.Weather.StationOf(gauge.StationId) is not { } source)
        {
            return rain;
        }

        var all = WeatherDays.Counted(site, source.Id, WeatherDays.Of(readings, source.Id), asOf).Readings;
        var (mm, known) = (0.0, TimeSpan.Zero);
        for (var date = clock.DateOf(span.From); date <= lastDate; date = date.AddDays(1))
        {
            foreach (var reading in StationWindow.Of(site, source, DaySpan.Of(clock, date), all, asOf).OfDay.Where(r => !double.IsNaN(r.RainMm)))
            {
                var within = span.Within(reading.Begin, reading.End);
                known += within;
                mm += reading.RainMm * (within / (reading.End - reading.Begin));
            }
        }

        var over = (span.To < asOf ? span.To : asOf) - span.From;
        return rain with { Station = source.Id, InstrumentMm = known > TimeSpan.Zero ? mm : null, InstrumentMissing = over > known ? over - known : TimeSpan.Zero };
    }
}
