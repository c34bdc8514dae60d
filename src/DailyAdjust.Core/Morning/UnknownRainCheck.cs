using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Sites;
using DailyAdjust.Core.Weather;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Rain days that nobody knows. Such a day matters to a zone until the zone has been full or probed on a later day: then
/// whatever fell makes no difference any more. The running day is one too where a reading since midnight was set aside.
/// </summary>
internal sealed class UnknownRainCheck
{
    private readonly List<UnknownRain> _days;
    private readonly HashSet<StationKey> _zonesInDoubt = [];
    private readonly HashSet<UnknownRain> _inDoubt = [];
    private readonly AdviceContext _context;

    public UnknownRainCheck(AdviceContext context, IReadOnlyList<WeatherDay> weather, GroundKnowledge known)
    {
        _context = context;

        // Nobody can answer for a gauge that the site no longer has, and need not for one that serves no ground (but as a substitute).
        var serving = context.Zones.Select(z => z.Station.Gauge).ToHashSet(StringComparer.Ordinal);
        var gauges = context.Site.Weather.Gauges.Select(g => g.Id).Where(serving.Contains).ToHashSet(StringComparer.Ordinal);
        var first = context.Date.AddDays(-LookBack.Days);
        _days =
        [
            .. weather.Where(w => w.Date >= first).SelectMany(w => w.Rain.Where(r => r.Basis == RainBasis.Unknown && gauges.Contains(r.Gauge)).Select(r => new UnknownRain(r.Gauge, w.Date, r.MeasuredPartMm))),
            .. context.RainSinceMidnight.Where(r => r.IsPartAside && r.Basis != RainBasis.Substitute && gauges.Contains(r.Gauge)).Select(r => new UnknownRain(r.Gauge, context.Date, r.RainMm ?? 0)),
        ];
        if (_days.Count == 0)
        {
            return;
        }

        foreach (var zone in context.Zones)
        {
            var last = known.KnownOn(zone.Station.Key) ?? DateOnly.MinValue;
            var stillThere = _days.Where(d => string.Equals(d.Gauge, zone.Station.Gauge, StringComparison.Ordinal) && d.Date >= last).ToList();
            if (stillThere.Count > 0)
            {
                _zonesInDoubt.Add(zone.Station.Key);
                _inDoubt.UnionWith(stillThere);
            }
        }
    }

    /// <summary>The days to ask for: those of the last two weeks, and older ones that still hold a number down; newest first.</summary>
    public IReadOnlyList<UnknownRain> Asked(DateOnly sheetDate) =>
        [.. _days.Where(d => d.Date > sheetDate.AddDays(-15) || _inDoubt.Contains(d)).OrderByDescending(d => d.Date)];

    /// <summary>Whether unknown rain may still lie in ground of a program.</summary>
    public bool RestsOnIt(ProgramCase program) =>
        _zonesInDoubt.Count > 0 && _context.ZonesOf(program.Program).Any(z => IsIn(z.Station.Key));

    /// <summary>Whether unknown rain may still lie in a zone.</summary>
    public bool IsIn(StationKey station) => _zonesInDoubt.Contains(station);
}
