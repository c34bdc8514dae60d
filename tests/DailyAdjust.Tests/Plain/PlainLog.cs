using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>What the logbook says: settings, what ran, what was done by hand.</summary>
internal sealed class PlainLog(IReadOnlyList<SiteVersion> versions, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets)
{
    public Site SiteOn(DateOnly date) => (versions.LastOrDefault(v => v.From <= date) ?? versions[0]).Site;

    /// <summary>The setting in force at an instant; 100 % before the first entry. Whether it is on is its own; a number may be said of any program on its dial.</summary>
    public Setting SettingAt(ProgramKey program, DateTimeOffset at)
    {
        var (number, isOff) = (Setting.Full, false);
        DateTimeOffset? numberSince = null, ownSince = null;
        foreach (var (entry, who) in log.SelectMany(e => OnOneDial(e, program).Select(p => (e, p))))
        {
            if (Change(entry, who) is not { } change || change.From > at)
            {
                continue;
            }

            if (!change.Setting.IsOff && !(change.From < numberSince))
            {
                (number, numberSince) = (change.Setting, change.From);
            }

            if (who == program && !(change.From < ownSince))
            {
                (isOff, ownSince) = (change.Setting.IsOff, change.From);
            }
        }

        return isOff ? Setting.Off : number;
    }

    /// <summary>The programs that run at one number with a program by the site of the day that an entry speaks of: itself, or all of its box.</summary>
    private IEnumerable<ProgramKey> OnOneDial(LogEntry entry, ProgramKey program)
    {
        var box = SiteOn(entry.Sheet ?? entry.Time.Date).Controllers.FirstOrDefault(c => string.Equals(c.Id, program.Controller, StringComparison.Ordinal));
        return box is { Applies: PercentApplies.Controller } ? box.Programs.Select(p => new ProgramKey(box.Id, p.Id)) : [program];
    }

    /// <summary>The share of the due minutes that a start really ran: station over program over controller over site, then the latest.</summary>
    public double RanShare(Station station, PlainStart start)
    {
        var covering = log
            .Select((entry, order) => (entry, order))
            .Where(x => x.entry.Kind == LogKind.Ran && Nearness(x.entry.Where, station, start) > 0 && Covers(x.entry, start))
            .OrderBy(x => Nearness(x.entry.Where, station, start))
            .ThenBy(x => Instant(x.entry))
            .ThenBy(x => x.order)
            .ToList();
        return covering.Count == 0 ? 1 : covering[^1].entry.Value!.Value / 100;
    }

    /// <summary>Hand-started runs, hose and probe readings of a station on a date.</summary>
    public IEnumerable<PlainEvent> ByHand(Station station, DateOnly date)
    {
        var site = SiteOn(date);
        var controller = site.Controllers.Single(c => c.Id.Is(station.Key.Controller));
        List<(DateTimeOffset At, double Percent, int Order)> probed = [];
        List<DateTimeOffset> wetted = [];
        for (var i = 0; i < log.Count; i++)
        {
            var entry = log[i];
            if (entry.Time.Date != date || entry.Value is not { } value)
            {
                continue;
            }

            // After the programs' own starts at the same instant.
            var order = 1000 + i;
            var at = Instant(entry);
            switch (entry.Kind)
            {
                case LogKind.Run when IsStation(entry.Where, station) && entry.Unit == LogUnit.Minutes:
                    yield return new(at, PlainWhat.Irrigation, PlainWater.NetMm(station, value), order);
                    break;
                case LogKind.Run when entry.Where.Kind == PlaceKind.Program && entry.Where.Name.Is(station.Key.Controller)
                    && station.BaseMinutes.TryGetValue(entry.Where.Item, out var minutes):
                    yield return new(at, PlainWhat.Irrigation, PlainWater.NetMm(station, PlainWater.Minutes(controller, minutes, value)), order);
                    break;
                case LogKind.Hose when IsStation(entry.Where, station):
                    yield return new(at, PlainWhat.Hose, entry.Unit == LogUnit.Litres ? value / station.GroundM2!.Value : value, order);
                    break;
                case LogKind.Probe when (IsStation(entry.Where, station) || IsArea(entry.Where, station)) && station.Area.Soil.FieldCapacityPercent is not null:
                    probed.Add((at, value, order));
                    continue;
                default:
                    continue;
            }

            wetted.Add(at);
        }

        // One walk: within an hour of its first reading, with no water from a hand in between.
        var left = probed.OrderBy(p => p.At).ThenBy(p => p.Order).ToList();
        while (left.Count > 0)
        {
            var walk = left.Take(1).ToList();
            foreach (var next in left.Skip(1))
            {
                if (next.At > walk[0].At.AddHours(1) || wetted.Any(w => walk[^1].At <= w && w < next.At))
                {
                    break;
                }

                walk.Add(next);
            }

            left.RemoveRange(0, walk.Count);
            var mean = walk.Sum(w => w.Percent) / walk.Count;
            yield return new(walk[^1].At, PlainWhat.Probe, (station.Area.Soil.FieldCapacityPercent!.Value - mean) / 100 * station.Area.RootDepthM * 1000, walk[^1].Order);
        }
    }

    private static bool IsStation(Place where, Station station) =>
        where.Kind == PlaceKind.Station && where.Name.Is(station.Key.Controller) && where.Item.Is(station.Key.Station);

    private static bool IsArea(Place where, Station station) => where.Kind == PlaceKind.Area && where.Name.Is(station.Area.Name);

    public static bool Covers(Place where, ProgramKey program) => where.Kind switch
    {
        PlaceKind.Site => true,
        PlaceKind.Controller => where.Name.Is(program.Controller),
        PlaceKind.Program => where.Name.Is(program.Controller) && where.Item.Is(program.Program),
        _ => false,
    };

    private static int Nearness(Place where, Station station, PlainStart start)
    {
        if (IsStation(where, station))
        {
            return 4;
        }

        return !Covers(where, start.Program) ? 0 : where.Kind switch
        {
            PlaceKind.Program => 3,
            PlaceKind.Controller => 2,
            _ => 1,
        };
    }

    private bool Covers(LogEntry ran, PlainStart start)
    {
        if (ran.Time.Clock is null)
        {
            return start.Date == ran.Time.Date;
        }

        var t = Instant(ran);
        return start.At > t.AddHours(-24) && start.At <= t;
    }

    private DateTimeOffset Instant(LogEntry entry) => entry.Time.Instant(SiteOn(entry.Time.Date).Clock);

    /// <summary>From when on an entry puts which setting on a program; null = it does not.</summary>
    private (DateTimeOffset From, Setting Setting)? Change(LogEntry entry, ProgramKey program)
    {
        switch (entry.Kind)
        {
            case LogKind.Setting when Covers(entry.Where, program):
                // What the dial cannot show was never on it.
                var box = SiteOn(entry.Time.Date).Controllers.FirstOrDefault(c => string.Equals(c.Id, program.Controller, StringComparison.Ordinal));
                if (box is not null && box.Applies != PercentApplies.None && entry.Value > 0 && (entry.Value < box.PercentMin || entry.Value > box.PercentMax))
                {
                    return null;
                }

                return (Instant(entry), new Setting(entry.Value!.Value));
            case LogKind.Off when Covers(entry.Where, program):
                return (Instant(entry), Setting.Off);
            case LogKind.Round when !entry.Except.Any(e => Covers(e, program)):
                return RoundChange(entry, program);
            default:
                return null;
        }
    }

    private (DateTimeOffset From, Setting Setting)? RoundChange(LogEntry entry, ProgramKey program)
    {
        if (!Covers(entry.Where, program))
        {
            return null;
        }

        var said = Instant(entry);
        var date = entry.Sheet!.Value;
        var sheet = sheets
            .Where(s => s.Date == date && (entry.Issue is { } issue ? s.Issue == issue : s.AsOf <= said))
            .MaxBy(s => s.Issue);
        var line = sheet?.Lines.FirstOrDefault(l => l.Program == program);
        if (line is not { Asks: true })
        {
            return null;
        }

        var site = SiteOn(date);
        var done = site.Clock.ToInstant(date, site.Report.RoundDoneBy);
        return (said < done ? said : done, line.Percent is { } percent ? new Setting(percent) : Setting.Off);
    }
}
