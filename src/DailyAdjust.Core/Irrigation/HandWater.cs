using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What people did by hand, from the logbook: runs started by hand, hose, probe readings. By date of the balance.</summary>
internal sealed class HandWater
{
    private readonly Dictionary<DateOnly, List<(LogEntry Entry, DateTimeOffset At)>> _byDate = [];
    private readonly Dictionary<string, List<(LogEntry Entry, DateTimeOffset At)>> _atBox = new(StringComparer.Ordinal);
    private DateOnly _atBoxOn;

    public HandWater(SiteClock clock, IReadOnlyList<LogEntry> log)
    {
        foreach (var entry in log)
        {
            if (entry.Kind is LogKind.Run or LogKind.Hose or LogKind.Probe && entry.Value is not null)
            {
                var list = _byDate.TryGetValue(entry.Time.Date, out var known) ? known : _byDate[entry.Time.Date] = [];
                list.Add((entry, entry.Time.Instant(clock)));
            }
        }
    }

    /// <summary>Whether a date's entries may speak of a box's stations.</summary>
    public bool MayBeAt(string controller, DateOnly date) => _byDate.TryGetValue(date, out var all) && AtBox(controller, date, all).Count > 0;

    /// <summary>One station's events of a date, and the minutes it was run by hand.</summary>
    public double AddEvents(List<WaterEvent> events, ZonePlan zone, DateOnly date, DrawCurve curve, DateTimeOffset dayEnd)
    {
        if (!_byDate.TryGetValue(date, out var all))
        {
            return 0;
        }

        var minutesRun = 0.0;
        var firstOfHand = events.Count;
        List<(LogEntry Entry, DateTimeOffset At)>? readings = null;
        foreach (var (entry, at) in AtBox(zone.Station.Key.Controller, date, all))
        {
            var drawnBy = at >= dayEnd ? 1 : curve.ShareBy(at);
            switch (entry.Kind)
            {
                case LogKind.Run when Minutes(entry, zone) is { } minutes:
                    minutesRun += minutes;
                    events.Add(new WaterEvent(at, WaterKind.Irrigation, drawnBy, zone.Net.DepthMm(minutes)));
                    break;
                case LogKind.Hose when Depth(entry, zone) is { } depth:
                    events.Add(new WaterEvent(at, WaterKind.Hose, drawnBy, depth));
                    break;
                case LogKind.Probe when entry.Where.Covers(zone.Station) && zone.Station.Area.Soil.FieldCapacityPercent is not null:
                    (readings ??= []).Add((entry, at));
                    break;
                default:
                    break;
            }
        }

        if (readings is not null)
        {
            AddReadings(events, readings, firstOfHand, zone, curve, dayEnd);
        }

        return minutesRun;
    }

    /// <summary>On its own, for few days have a reading: what its lambda holds would be made for every zone and day.</summary>
    private static void AddReadings(List<WaterEvent> events, List<(LogEntry Entry, DateTimeOffset At)> readings, int firstOfHand, ZonePlan zone, DrawCurve curve, DateTimeOffset dayEnd)
    {
        List<DateTimeOffset> byHand = [.. events.Skip(firstOfHand).Select(e => e.At)];
        events.AddRange(ProbeMean.Of(readings, byHand).Select(mean => new WaterEvent(mean.At, WaterKind.Probe, mean.At >= dayEnd ? 1 : curve.ShareBy(mean.At), zone.DepletionAt(mean.Percent)!.Value)));
    }

    /// <summary>A date's entries that may speak of a box's stations: most speak of others.</summary>
    private List<(LogEntry Entry, DateTimeOffset At)> AtBox(string controller, DateOnly date, List<(LogEntry Entry, DateTimeOffset At)> all)
    {
        if (_atBoxOn != date)
        {
            _atBox.Clear();
            _atBoxOn = date;
        }

        return _atBox.TryGetValue(controller, out var known) ? known : _atBox[controller] = Touching(all, controller);
    }

    /// <summary>On its own for the same reason.</summary>
    private static List<(LogEntry Entry, DateTimeOffset At)> Touching(List<(LogEntry Entry, DateTimeOffset At)> all, string controller) => all.FindAll(e => e.Entry.Where.MayTouch(controller));

    /// <summary>Minutes on the station itself; a percentage runs a whole program as a start would.</summary>
    internal static double? Minutes(LogEntry entry, ZonePlan zone)
    {
        if (entry.Unit == LogUnit.Minutes)
        {
            return entry.Where.Covers(zone.Station) ? entry.Value : null;
        }

        if (entry.Where.Kind == PlaceKind.Station)
        {
            return null;
        }

        var minutes = 0.0;
        foreach (var (program, baseMinutes) in zone.Programs)
        {
            if (entry.Where.Covers(program.Key))
            {
                minutes += RunMinutes.At(program.Controller, baseMinutes, entry.Value!.Value);
            }
        }

        return minutes > 0 ? minutes : null;
    }

    /// <summary>Depth of a hose entry over the zone, mm; null = it does not speak of it, or its ground is not known.</summary>
    internal static double? Depth(LogEntry entry, ZonePlan zone)
    {
        if (!entry.Where.Covers(zone.Station))
        {
            return null;
        }

        if (entry.Unit == LogUnit.Mm)
        {
            return entry.Value;
        }

        // A volume spreads over the ground it was said to go to.
        var ground = entry.Where.Kind == PlaceKind.Station ? zone.Station.GroundM2 : zone.GroundOf(entry.Where);
        return ground is > 0 ? entry.Value / ground : null;
    }
}
