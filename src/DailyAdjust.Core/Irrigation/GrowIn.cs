using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Irrigation;

/// <summary>What a grow-in runs from one round to the next.</summary>
/// <param name="Sheet">The date of the sheet that says so.</param>
/// <param name="Progress">0 on its first day, 1 when the program's own starts take over.</param>
/// <param name="Starts">Times of day on the controller's clock, ascending.</param>
public sealed record GrowInDay(DateOnly Sheet, double Progress, IReadOnlyList<TimeOnly> Starts);

/// <summary>
/// New turf on one program: several short starts every day, which taper to the program's own. From the round of one date to the next,
/// starts fall evenly to the program's own, and the minutes of a start follow so that a day's base minutes change evenly from the one to
/// the other; the program's percentage goes on to act on them. More starts than the program's own are spread evenly over the 12 hours from 07:00. Source: common practice.
/// </summary>
public sealed class GrowIn
{
    private static readonly TimeOnly DayBegins = new(7, 0);
    private static readonly TimeSpan DayLasts = TimeSpan.FromHours(12);
    private readonly Site _site;
    private readonly Controller _controller;
    private readonly WateringProgram _program;
    private readonly int _startsFirst;
    private readonly double _minutesFirst;

    private GrowIn(Site site, Controller controller, WateringProgram program, LogEntry entry)
    {
        _site = site;
        _controller = controller;
        _program = program;
        _startsFirst = entry.Times!.Value;
        _minutesFirst = entry.Value!.Value;
        Entry = entry;
        First = entry.Time.Date;
        Last = entry.Until!.Value.Date;
        From = entry.Time.Begin(site.Clock);
        Ends = entry.Until.Value.Clock is null ? site.RoundDone(Last.AddDays(1)) : entry.Until.Value.Instant(site.Clock);
    }

    public ProgramKey Program => new(_controller.Id, _program.Id);

    /// <summary>Who, why, and until when.</summary>
    public LogEntry Entry { get; }

    public DateOnly First { get; }

    /// <summary>The last date on which a sheet has grow-in starts.</summary>
    public DateOnly Last { get; }

    /// <summary>UTC.</summary>
    public DateTimeOffset From { get; }

    /// <summary>UTC: from then on the program's own starts run. With a bare date: the round of the date after it.</summary>
    public DateTimeOffset Ends { get; }

    /// <summary>The grow-ins of a site's programs, in order of arrival.</summary>
    internal static IReadOnlyList<GrowIn> Of(Site site, IReadOnlyList<LogEntry> log)
    {
        var found = new List<GrowIn>();
        foreach (var entry in log.Where(e => e is { Kind: LogKind.GrowIn, Value: not null, Times: not null, Until: not null }))
        {
            var controller = site.ControllerOf(entry.Where.Name);
            var program = controller?.Programs.FirstOrDefault(p => string.Equals(p.Id, entry.Where.Item, StringComparison.Ordinal));
            if (program is not null)
            {
                found.Add(new GrowIn(site, controller!, program, entry));
            }
        }

        return found;
    }

    public bool IsOn(DateTimeOffset instant) => From <= instant && instant < Ends;

    /// <summary>What runs from a date's round to the next; null = its grow-in has not begun or is over.</summary>
    public GrowInDay? On(DateOnly sheet)
    {
        if (sheet < First || sheet > Last)
        {
            return null;
        }

        var own = _program.Starts.Count;
        var progress = (double)(sheet.DayNumber - First.DayNumber) / (Last.DayNumber + 1 - First.DayNumber);
        var starts = Math.Max(1, (int)Math.Round(_startsFirst + ((own - _startsFirst) * progress), MidpointRounding.AwayFromZero));
        return new GrowInDay(sheet, progress, starts <= own
            ? [.. _program.Starts.Take(starts)]
            : [.. Enumerable.Range(0, starts).Select(i => DayBegins.Add(DayLasts / starts * i)).Select(t => new TimeOnly(t.Hour, t.Minute))]);
    }

    /// <summary>Minutes of a station to be keyed for each start, on the controller's step, never 0; they run at the program's percentage.</summary>
    /// <param name="day">What runs.</param>
    /// <param name="baseMinutes">The station's, above 0.</param>
    public double MinutesOf(GrowInDay day, double baseMinutes)
    {
        var ownADay = _program.Starts.Count * baseMinutes;
        var aDay = (_startsFirst * _minutesFirst * (1 - day.Progress)) + (ownADay * day.Progress);
        return Math.Max(RunMinutes.At(_controller, aDay / day.Starts.Count, 100), _controller.MinutesStep);
    }

    /// <summary>Its starts whose instant lies in the site's calendar day, in order.</summary>
    public IEnumerable<(ProgramStart Start, GrowInDay Day)> InDay(DateOnly day)
    {
        if (!_controller.ClockStaysStandard)
        {
            return OnDate(day);
        }

        // A controller on standard time may start on the site's next or last calendar date.
        DateTimeOffset begin = _site.Clock.DayStart(day), end = _site.Clock.DayEnd(day);
        return OnDate(day.AddDays(-1)).Concat(OnDate(day)).Concat(OnDate(day.AddDays(1))).Where(s => s.Start.At >= begin && s.Start.At < end);
    }

    /// <summary>Its starts of one date on the controller's clock, in order: up to the round those of the date before, then those of the date itself.</summary>
    private IEnumerable<(ProgramStart Start, GrowInDay Day)> OnDate(DateOnly date)
    {
        var round = _site.RoundDone(date);
        var today = On(date);
        var early = On(date.AddDays(-1)) ?? today;
        var before = early?.Starts.Select(t => (At: ProgramStarts.Instant(_site, _controller, date, t), Day: early)).Where(s => s.At < round) ?? [];
        var after = today?.Starts.Select(t => (At: ProgramStarts.Instant(_site, _controller, date, t), Day: today)).Where(s => s.At >= round) ?? [];
        return before.Concat(after).Where(s => IsOn(s.At)).Select(s => (new ProgramStart(date, s.At), s.Day));
    }
}

/// <summary>The grow-in in force, by program; a later entry takes an earlier one's place from its begin on.</summary>
/// <param name="site">The site.</param>
/// <param name="log">Its logbook.</param>
/// <param name="ownStarts">Keeps the programs' own starts; null = days are asked for once.</param>
internal sealed class GrowIns(Site site, IReadOnlyList<LogEntry> log, OwnStarts? ownStarts = null)
{
    private readonly ILookup<ProgramKey, GrowIn> _all = GrowIn.Of(site, log).ToLookup(g => g.Program);
    private readonly IReadOnlyList<(LogEntry Entry, DateTimeOffset At)> _off = [.. log.Where(e => e.Kind == LogKind.Off && e.Sheet is null).Select(e => (e, e.Time.Instant(site.Clock)))];

    public IEnumerable<GrowIn> All => _all.SelectMany(g => g);

    /// <summary>Null = its own starts run.</summary>
    public GrowIn? At(ProgramKey program, DateTimeOffset instant) =>
        _all[program].Where(g => g.From <= instant).OrderBy(g => g.From).LastOrDefault() is { } newest && newest.IsOn(instant) ? newest : null;

    /// <summary>All of a program's starts whose instant lies in the site's calendar day, in order: its own ones only where no grow-in is in force.</summary>
    public IReadOnlyList<StartInForce> InDay(PlannedProgram program, DateOnly day)
    {
        var own = ownStarts?.On(program, day) ?? OwnStarts.Of(site, program, day);
        return _all.Count > 0 && _all.Contains(program.Key)
            ? [.. own.Where(s => At(program.Key, s.Start.At) is null).Concat(GrownInDay(program.Key, day)).OrderBy(s => s.Start.At)]
            : own;
    }

    /// <summary>The same from an instant on, lazily.</summary>
    public IEnumerable<StartInForce> From(PlannedProgram program, DateTimeOffset from)
    {
        var first = site.Clock.DateOf(from);
        for (var ahead = 0; ahead < ProgramStarts.DaysAhead; ahead++)
        {
            foreach (var start in InDay(program, first.AddDays(ahead)))
            {
                if (start.Start.At >= from)
                {
                    yield return start;
                }
            }
        }
    }

    /// <summary>The first start of a program's grow-ins from an instant on; null = there is none.</summary>
    public StartInForce? First(PlannedProgram program, DateTimeOffset from) => _all[program.Key].Max(g => (DateTimeOffset?)g.Ends) is { } ends
        ? From(program, from).TakeWhile(s => s.Start.At < ends).Where(s => s.GrowIn is not null).Cast<StartInForce?>().FirstOrDefault()
        : null;

    /// <summary>
    /// Whether somebody stopped it: a pause or off since it began, by his own word. What a sheet asked for, to wait for rain or an order, is over with that. One that was off before is only found off on a round; `off` alone says that it is to stay so.
    /// `Off` with a note of what is wrong is asked about, and stops it no longer than that.
    /// </summary>
    public bool IsStopped(GrowIn growIn, SettingHistory settings, DateTimeOffset at)
    {
        var setting = settings.At(growIn.Program, at);
        if (!setting.Setting.IsOff || settings.IsOffBySheet(growIn.Program, at))
        {
            return false;
        }

        if (setting.PausedUntil is not null)
        {
            return setting.PausedBy is { } paused && paused.Time.Instant(site.Clock) > growIn.From;
        }

        var since = settings.OffSince(growIn.Program, at);
        var said = _off.Where(o => o.At > growIn.From && o.At >= since && o.At <= at && o.Entry.Where.Covers(growIn.Program)).OrderBy(o => o.At).LastOrDefault();
        return said.Entry is { } off ? off.Note.Length == 0 : since > growIn.From;
    }

    private IEnumerable<StartInForce> GrownInDay(ProgramKey program, DateOnly day) => _all[program]
        .SelectMany(g => g.InDay(day).Where(s => ReferenceEquals(At(program, s.Start.At), g)).Select(s => new StartInForce(s.Start, (g, s.Day))));
}
