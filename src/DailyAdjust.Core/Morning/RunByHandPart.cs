using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>
/// After a night that failed: what did not run by the logbook and cannot wait, less what was run by hand since, by the site's priority,
/// in groups of boxes that the pump carries. Source: common practice.
/// </summary>
internal static class RunByHandPart
{
    /// <summary>How far ahead runs by themselves are looked at.</summary>
    private static readonly TimeSpan Ahead = TimeSpan.FromHours(12);

    /// <summary>Null = nothing was missed that is not made up for.</summary>
    public static RunByHand? Of(AdviceContext context, IReadOnlyList<LogEntry> log, IReadOnlyList<ProgramAdvice> programs)
    {
        var water = new MissedWater(context, log, programs);
        var permits = new HandPermits(context);
        List<(MissedZone Zone, MissedStation Left)> needed = [];
        List<StationKey> canWait = [], mustNot = [];
        foreach (var missed in water.OfTheNight())
        {
            var (run, net) = water.RunSince(missed);
            if (missed.MissedMinutes - run < LeastWorth(missed))
            {
                continue;
            }

            var station = missed.Zone.Station;
            if (water.CanWait(missed, net))
            {
                canWait.Add(station.Key);
            }
            else if (!permits.May(missed.Zone, context.AsOf))
            {
                mustNot.Add(station.Key);
            }
            else if (RunMinutes.At(missed.Controller, Math.Min(missed.MissedMinutes - run, water.RoomMinutes(missed.Zone)), 100) is var minutes && minutes >= LeastWorth(missed))
            {
                needed.Add((missed, new MissedStation(station.Key, station.Label, station.Area.Name, missed.MissedMinutes, run, minutes, station.FlowLPerMin)));
            }
            else if (run == 0)
            {
                // No room for a run worth its while; after runs by hand there is nothing more to say.
                canWait.Add(station.Key);
            }
        }

        if (needed.Count + canWait.Count + mustNot.Count == 0)
        {
            return null;
        }

        var pump = new PumpLoad(context.Site, log);
        var gives = pump.LeastIn(context.AsOf, context.AsOf);
        var beyond = needed.Where(n => n.Left.FlowLPerMin > gives).Select(n => n.Left).ToList();
        DateTimeOffset? firstPlay = context.Site.Report.FirstPlay is { } play ? context.Site.Clock.ToInstant(context.Date, play) : null;
        var (groups, left) = new HandGroups(pump, RunsByThemselves(context), permits).Of(Blocks(context, [.. needed.Where(n => !(n.Left.FlowLPerMin > gives))]), context.AsOf, firstPlay);
        return new RunByHand { FirstPlay = firstPlay, Groups = groups, NotBeforePlay = left, BeyondPump = beyond, CanWait = canWait, MustNotRun = mustNot };
    }

    /// <summary>Less is not worth starting a station for, minutes: the site's shortest run, or all the station was due where that is less.</summary>
    private static double LeastWorth(MissedZone missed) =>
        Math.Max(Math.Min(missed.Controller.LeastRunMinutes, missed.Starts.Max(s => s.Due)), missed.Controller.MinutesStep / 2);

    /// <summary>Programs of which all is needed, the other stations by box and area; the most important ground first, then in walking order.</summary>
    private static IEnumerable<HandBlock> Blocks(AdviceContext context, List<(MissedZone Zone, MissedStation Left)> needed)
    {
        var blocks = new List<HandBlock>();
        foreach (var program in context.Programs)
        {
            var zones = needed.Where(n => n.Zone.Starts.All(s => s.Start.Program.Key == program.Key)).ToList();
            if (zones.Count > 0 && WholeProgram(context, program, zones) is { } percent)
            {
                blocks.Add(Block(context, program.Controller, new HandBox(program.Key.Controller, program.Key.Program, percent, [.. zones.Select(z => z.Left)])));
                needed.RemoveAll(zones.Contains);
            }
        }

        blocks.AddRange(needed
            .GroupBy(n => (n.Zone.Controller, n.Left.Area))
            .Select(g => Block(context, g.Key.Controller, new HandBox(g.Key.Controller.Id, null, null, [.. g.Select(n => n.Left)]))));
        return blocks.OrderBy(b => b.Rank).ThenBy(b => b.Controller.Route);
    }

    private static HandBlock Block(AdviceContext context, Controller controller, HandBox box) => new(context.Site.PriorityOf(box.Stations.Select(s => s.Area)), controller, box);

    /// <summary>The setting at which one start of the program gives each of its stations what it needs now; null = none does.</summary>
    private static double? WholeProgram(AdviceContext context, PlannedProgram program, List<(MissedZone Zone, MissedStation Left)> zones)
    {
        var start = zones[0].Zone.Starts[0].Start;
        return start.GrowIn is null
            && zones.TrueForAll(z => z.Zone.Starts.Count == 1 && z.Left.Minutes == z.Zone.Starts[0].Due)
            && zones.Count == context.ZonesOf(program).Count(z => DayOfSite.MinutesDue(start, z.Station.BaseMinutes[program.Key.Program]) > 0)
            ? start.Setting.Percent
            : null;
    }

    private static IReadOnlyList<PlannedRun> RunsByThemselves(AdviceContext context) =>
    [
        .. context.Laying
            .Between(context.GrowIns, context.Programs, context.AsOf - Ahead, context.AsOf + Ahead, (key, start) => context.SettingAt(key, start.Start.At).Percent)
            .Where(r => r.Finishes > context.AsOf),
    ];
}
