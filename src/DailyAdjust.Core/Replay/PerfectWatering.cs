using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Replay;

/// <summary>
/// Perfect knowledge: at every start every station gets the least water that keeps its zone within the allowable depletion until the program's
/// next watering date, by our balance and by the protocol's, with the ETo and the rain that really come. No dial, no whole minutes; a start
/// stops at the longest cycle without runoff. What no person could do, to measure by.
/// </summary>
internal sealed class PerfectWatering(IReadOnlyList<ReplayDay> days, SitePlan plan) : Watering
{
    private readonly DateOnly _first = days[0].Date;
    private readonly List<ReplayEvent> _ahead = [];
    private readonly Dictionary<(StationKey Station, int Program), (DateOnly Date, double Minutes)> _last = [];
    private readonly HashSet<(DateOnly Date, int Program)> _changed = [];

    /// <summary>By program: watering dates on which some station's minutes were not those of the date before.</summary>
    public int[] Changes() => [.. Enumerable.Range(0, plan.Programs.Count).Select(i => _changed.Count(c => c.Program == i))];

    /// <summary>Walks to a controller that this would take.</summary>
    public int Visits() => _changed.Select(c => (c.Date, plan.Programs[c.Program].Key.Controller)).Distinct().Count();

    public override double Minutes(in Moment moment)
    {
        var zone = moment.Zone;
        var allowable = zone.Plan.AllowableMm;
        double ours = moment.DepletionMm, theirs = moment.RoomMm, need = 0;
        bool oursOpen = true, theirsOpen = true;
        var start = moment.Start;
        var events = moment.Events;
        var drawnBy = start.DrawnBy;
        var demand = moment.DemandMm;
        var day = moment.Day;
        for (var i = moment.Index + 1; oursOpen || theirsOpen; i++)
        {
            var isEnd = i >= events.Count;
            var by = isEnd ? 1 : events[i].DrawnBy;
            var drawn = demand * Math.Max(0, by - drawnBy);
            drawnBy = Math.Max(drawnBy, by);
            ours += drawn;
            theirs += drawn;
            need = Math.Max(need, Math.Max(oursOpen ? ours - allowable : 0, theirsOpen ? theirs - allowable : 0));
            if (isEnd)
            {
                var next = day.Date.DayNumber + 1 - _first.DayNumber;
                if (next >= days.Count)
                {
                    break;
                }

                day = days[next];
                day.Gather(zone, _ahead);
                (events, demand, drawnBy, i) = (_ahead, zone.DemandMm(day), 0, -1);
                continue;
            }

            if (events[i].Run is not null)
            {
                if (events[i].StartDate > start.StartDate)
                {
                    break;
                }

                continue;
            }

            // Once rain fills the ground, water given now makes no difference any more.
            ours -= events[i].SoilMm;
            theirs -= events[i].RainMm * ProtocolBalance.RainShare;
            oursOpen &= ours > need;
            theirsOpen &= theirs > need;
        }

        var minutes = MinutesFor(zone, Math.Min(need, moment.RoomMm));
        Note(moment, minutes);
        return minutes;
    }

    private static double MinutesFor(ReplayZone zone, double netMm)
    {
        var station = zone.Plan.Station;
        var minutes = netMm / (zone.MmPerMinute * station.Efficiency);
        return station.Area.Soil.IntakeRate is { } intake && station.Rate.MmPerHour > intake.MmPerHour
            ? Math.Min(minutes, NetIrrigation.LongestCycleMinutes(station.Rate.MmPerHour, intake.MmPerHour, station.Area.Soil.SurfaceStorage.Mm))
            : minutes;
    }

    private void Note(in Moment moment, double minutes)
    {
        var start = moment.Start;
        var key = (moment.Zone.Plan.Station.Key, start.Run!.Program);
        if (_last.TryGetValue(key, out var last) && Math.Abs(last.Minutes - minutes) > 1e-9)
        {
            _changed.Add((start.StartDate, start.Run.Program));
        }

        _last[key] = (start.StartDate, minutes);
    }
}
