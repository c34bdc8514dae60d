using DailyAdjust.Core.Advice;
using DailyAdjust.Core.Agronomy;
using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Morning;

/// <summary>What one station missed of the night's starts.</summary>
/// <param name="Zone">The station.</param>
/// <param name="Controller">Its box.</param>
/// <param name="Starts">Starts of which something did not run, with the minutes due and missed, in order.</param>
internal sealed record MissedZone(ZonePlan Zone, Controller Controller, IReadOnlyList<(DayStart Start, double Due, double Missed)> Starts)
{
    public double MissedMinutes => Starts.Sum(s => s.Missed);

    public DateTimeOffset Since => Starts[0].Start.Start.At;
}

/// <summary>Minutes of the night that did not run by the logbook, and whether the ground can do without.</summary>
internal sealed class MissedWater(AdviceContext context, IReadOnlyList<LogEntry> log, IReadOnlyList<ProgramAdvice> programs)
{
    /// <summary>Beyond that no start is in sight.</summary>
    private static readonly TimeSpan InSight = TimeSpan.FromDays(7);

    private readonly Dictionary<ProgramKey, double> _after = programs.ToDictionary(p => p.Key, NightCuts.PercentAfter);

    /// <summary>Stations that missed water in the starts since yesterday's round, in station order.</summary>
    public IReadOnlyList<MissedZone> OfTheNight()
    {
        var site = context.Site;
        var begins = site.RoundDone(context.Date.AddDays(-1));
        var controllers = site.Controllers.ToDictionary(c => c.Id, StringComparer.Ordinal);
        var found = new List<MissedZone>();
        foreach (var zone in context.Zones)
        {
            List<(DayStart Start, double Due, double Missed)> starts = [.. new[] { context.Date.AddDays(-1), context.Date }
                .SelectMany(date => context.Day(date).StartsAt(zone.Station.Key.Controller)
                    .Where(s => s.Start.At >= begins && s.Start.At <= context.AsOf)
                    .Select(s => Missed(context.Day(date), s, zone)))
                .Where(s => s.Missed > 0)
                .OrderBy(s => s.Start.Start.At)];
            if (starts.Count > 0)
            {
                found.Add(new MissedZone(zone, controllers[zone.Station.Key.Controller], starts));
            }
        }

        return found;
    }

    /// <summary>What was run by hand since the station's first missed start.</summary>
    public (double Minutes, double NetMm) RunSince(MissedZone missed)
    {
        var runs = log
            .Where(e => e is { Kind: LogKind.Run, Value: not null } && e.Time.Instant(context.Site.Clock) >= missed.Since)
            .Select(e => HandWater.Minutes(e, missed.Zone) ?? 0)
            .ToList();
        return (runs.Sum(), runs.Sum(missed.Zone.Net.DepthMm));
    }

    /// <summary>
    /// Whether depletion stays within its allowable part up to the station's next start (for a day, where none is in sight), had nothing
    /// been run by hand: what was begun is finished.
    /// </summary>
    public bool CanWait(MissedZone missed, double runNetMm) =>
        DepletionMm(missed.Zone, NextStart(missed.Zone)) + runNetMm <= missed.Zone.AllowableMm + Depth.ToleranceMm;

    /// <summary>Gross minutes for which the ground has room now, less what its area leaves empty for rain.</summary>
    public double RoomMinutes(ZonePlan zone)
    {
        var room = DepletionMm(zone, context.AsOf) - (zone.Station.Area.LeaveEmpty * zone.AllowableMm);
        return HandRunsPart.GrossMinutes(Math.Max(0, room), zone.Station.Rate.MmPerHour, zone.Station.Efficiency);
    }

    private static (DayStart Start, double Due, double Missed) Missed(DayOfSite day, DayStart start, ZonePlan zone)
    {
        if (!zone.Station.BaseMinutes.TryGetValue(start.Program.Key.Program, out var baseMinutes))
        {
            return (start, 0, 0);
        }

        var due = DayOfSite.MinutesDue(start, baseMinutes);

        // What a rain switch kept from running nobody missed, unless somebody says so.
        return (start, due, due * Math.Max(0, 1 - day.ShareTold(start, zone.Station, untold: 1)));
    }

    private DateTimeOffset NextStart(ZonePlan zone)
    {
        var next = zone.Programs
            .SelectMany(p => context.StartsOf(p.Program, context.AsOf).Select(s => s.Start).TakeWhile(s => s.At <= context.AsOf + InSight)
                .Where(s => s.At > context.AsOf && (s.At < context.RoundDone ? !context.SettingAt(p.Program.Key, s.At).IsOff : _after[p.Program.Key] > 0))
                .Take(1))
            .Select(s => (DateTimeOffset?)s.At)
            .Min();
        return next ?? context.AsOf.AddDays(1);
    }

    /// <summary>Depletion right before an instant, mm, with no water after the as-of instant.</summary>
    private double DepletionMm(ZonePlan zone, DateTimeOffset at)
    {
        var soil = new RootZone(zone.TotalAvailableMm, zone.AllowableMm, context.DepletionMm[zone.Station.Key]);
        var last = context.Site.Clock.DateOf(at);
        for (var date = context.Date; date <= last; date = date.AddDays(1))
        {
            var day = context.Day(date);
            var events = date == context.Date ? WaterSinceMidnight.Of(context, zone) : [];
            var demand = context.DemandMm(zone, date);
            events.RemoveAll(e => e.At > at);
            ZoneDaySums.Run(ref soil, events, demand, date < last ? 1 : context.ShareDrawn(date, day.ShareBy(at)));
        }

        return soil.DepletionMm;
    }
}
