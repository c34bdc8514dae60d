using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>How much is known of each zone: when it was last full or probed, and what was estimated since.</summary>
internal sealed class GroundKnowledge
{
    private const int WeatherDays = 7;

    private readonly Dictionary<StationKey, (DateOnly Date, bool Probed)> _known = [];
    private readonly Dictionary<StationKey, DateOnly> _full = [];
    private readonly IReadOnlyList<WeatherDay> _weather;

    /// <param name="days">Zone days before the sheet's date, ascending.</param>
    /// <param name="weather">Ascending.</param>
    public GroundKnowledge(IReadOnlyList<ZoneDay> days, IReadOnlyList<WeatherDay> weather)
    {
        _weather = [.. weather.TakeLast(WeatherDays)];
        foreach (var day in days)
        {
            if (day.DrainageMm > 0)
            {
                _full[day.Station] = day.Date;
                _known[day.Station] = (day.Date, false);
            }

            if (day.Probes.Count > 0)
            {
                _known[day.Station] = (day.Date, true);
            }
        }
    }

    public HowSure Of(ZonePlan zone)
    {
        (DateOnly Date, bool Probed)? known = _known.TryGetValue(zone.Station.Key, out var found) ? found : null;
        return new HowSure(known?.Date, known?.Probed ?? false, _weather.Count(d => IsEstimated(d, zone.Station.Gauge)), zone.Station.RateKnown == RateKnown.Assumed);
    }

    /// <summary>The last date on which a zone was full; null = not in the days at hand.</summary>
    public DateOnly? FullOn(StationKey station) => _full.TryGetValue(station, out var date) ? date : null;

    private static bool IsEstimated(WeatherDay day, string gauge) =>
        day.Basis is EtoBasis.PartEstimated or EtoBasis.TemperatureOnly or EtoBasis.OtherStation or EtoBasis.Expected
        || day.Rain.Any(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal) && r.Basis is RainBasis.Unknown or RainBasis.Substitute);
}
