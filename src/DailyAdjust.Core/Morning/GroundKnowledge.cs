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

    private readonly IReadOnlyList<DayTraces> _days;

    /// <param name="days">Before the sheet's date, ascending.</param>
    /// <param name="weather">Ascending.</param>
    public GroundKnowledge(IReadOnlyList<DayTraces> days, IReadOnlyList<WeatherDay> weather)
    {
        _days = days;
        _weather = [.. weather.TakeLast(WeatherDays)];
        foreach (var day in days)
        {
            for (var i = 0; i < day.Seen.Length; i++)
            {
                if (day.Seen[i] == ZoneTrace.None)
                {
                    continue;
                }

                var station = day.Zones[i].Station.Key;
                _known[station] = (day.Date, day.Seen[i].HasFlag(ZoneTrace.Probed));
                if (day.Seen[i].HasFlag(ZoneTrace.Filled))
                {
                    _full[station] = day.Date;
                }
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

    /// <summary>The last date on which a zone was full or probed, whatever it was before; null = not in the days at hand.</summary>
    public DateOnly? KnownOn(StationKey station) => _known.TryGetValue(station, out var known) ? known.Date : null;

    /// <summary>The days at hand on which a zone was there, ascending.</summary>
    public IEnumerable<DayTraces> DaysOf(StationKey station) => _days.Where(d => d.Zones.Any(z => z.Station.Key == station));

    private static bool IsEstimated(WeatherDay day, string gauge) =>
        day.Basis is EtoBasis.PartEstimated or EtoBasis.TemperatureOnly or EtoBasis.OtherStation or EtoBasis.Expected
        || day.Rain.Any(r => string.Equals(r.Gauge, gauge, StringComparison.Ordinal) && r.Basis is RainBasis.Unknown or RainBasis.Substitute);
}
