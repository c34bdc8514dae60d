using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// Zones of which nobody knows how wet they are: their balance began with an assumption, or the season was opened, and since then
/// neither rain nor water filled them nor anybody probed them.
/// </summary>
internal sealed class AssumedSoilCheck
{
    private const double ShareTolerance = 1e-9;

    private readonly Dictionary<StationKey, DateOnly> _since = [];
    private readonly AdviceContext _context;

    public AssumedSoilCheck(AdviceContext context, GroundKnowledge known, IReadOnlyList<LogEntry> log)
    {
        _context = context;
        foreach (var zone in context.Zones.Where(z => !z.Station.Area.ByHand))
        {
            // Every sheet has these days at hand; an older assumption is not asked about any more.
            if (AssumedOn(zone) is { } since && since >= context.Date.AddDays(-LookBack.Days) && !(known.FullOn(zone.Station.Key) >= since))
            {
                _since[zone.Station.Key] = since;
            }
        }

        foreach (var zone in context.Zones.Where(z => _since.ContainsKey(z.Station.Key)))
        {
            // What came in since midnight fills ground as well as yesterday's rain did.
            var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, context.DepletionMm[zone.Station.Key]);
            var drawn = context.ShareDrawn(context.Date, context.Day(context.Date).ShareBy(context.AsOf));
            if (ZoneDaySums.Run(ref soil, WaterSinceMidnight.Of(context, zone), context.DemandMm(zone, context.Date), drawn).DrainedMm > 0)
            {
                _since.Remove(zone.Station.Key);
            }
        }

        foreach (var probe in log.Where(e => e.Kind == LogKind.Probe))
        {
            foreach (var zone in context.Zones.Where(z => probe.Where.Covers(z.Station) && z.Station.Area.Soil.FieldCapacityPercent is not null))
            {
                if (_since.TryGetValue(zone.Station.Key, out var since) && probe.Time.Date >= since)
                {
                    _since.Remove(zone.Station.Key);
                }
            }
        }
    }

    /// <summary>In station order.</summary>
    public IReadOnlyList<AssumedZone> Zones => [.. _context.Zones
        .Where(z => _since.ContainsKey(z.Station.Key))
        .Select(z => new AssumedZone(z.Station.Key, z.Station.Label, _since[z.Station.Key]))];

    /// <summary>Whether a program's need rests on such zones: the ground that is known is less than what a number has to serve.</summary>
    public bool RestsOnIt(ProgramCase program)
    {
        if (_since.Count == 0 || program.Need is not { } need)
        {
            return false;
        }

        var ground = ProgramNeed.GroundOf(need.Zones);
        return need.Zones.Where(z => !need.SetAside.Contains(z))
            .GroupBy(z => z.Zone.Station.Area.Name, StringComparer.Ordinal)
            .Any(area => area.Where(z => !_since.ContainsKey(z.Zone.Station.Key)).Sum(ground) / area.Sum(ground) < _context.Site.Report.Satisfy - ShareTolerance);
    }

    private DateOnly? AssumedOn(ZonePlan zone)
    {
        DateOnly? start = _context.Site.StartSoil == StartSoil.Assumed ? _context.Site.Start : null;
        var (state, since) = _context.Season.At(zone.Station.Key.Controller, _context.AsOf);
        DateOnly? opened = since is { } at && state is "open" ? _context.Site.Clock.DateOf(at) : null;
        return opened > start || start is null ? opened : start;
    }
}
