using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Weather;

/// <summary>Rain of gauges of which nothing is known, from the gauges that the site names in their place.</summary>
internal static class RainSubstitutes
{
    /// <summary>The same days; an unknown one has its substitute's rain where that is known, or that one's own substitute's, and says whose it is.</summary>
    /// <param name="gauges">The site's.</param>
    /// <param name="days">One per gauge, in their order, each as it is known by itself.</param>
    public static IReadOnlyList<GaugeDay> Apply(IReadOnlyList<Gauge> gauges, IReadOnlyList<GaugeDay> days) =>
        [.. days.Select((day, i) => day.Basis == RainBasis.Unknown && Known(gauges[i], gauges, days) is { } other
            ? day with { RainMm = other.RainMm, Falls = other.Falls, Basis = RainBasis.Substitute, Substitute = other.Gauge }
            : day)];

    private static GaugeDay? Known(Gauge gauge, IReadOnlyList<Gauge> gauges, IReadOnlyList<GaugeDay> days)
    {
        // Two gauges may name each other: no more steps than there are gauges.
        for (var step = 0; step < gauges.Count && gauge.SubstituteId is { } next; step++)
        {
            var day = days.FirstOrDefault(d => string.Equals(d.Gauge, next, StringComparison.Ordinal));
            if (day is null || day.Basis != RainBasis.Unknown)
            {
                return day;
            }

            gauge = gauges.First(g => string.Equals(g.Id, next, StringComparison.Ordinal));
        }

        return null;
    }
}
