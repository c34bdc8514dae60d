using DailyAdjust.Core.Quantities;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>The setting in force at an instant.</summary>
/// <param name="Setting">What the program is taken to run at.</param>
/// <param name="Confirmed">Somebody said so; otherwise it is taken to run at 100 %.</param>
public readonly record struct SettingInForce(Setting Setting, bool Confirmed)
{
    /// <summary>The box is paused and runs by itself again from then on, UTC; null = it is not paused.</summary>
    public DateTimeOffset? PausedUntil { get; init; }

    /// <summary>Who paused it, and why; null = it is not paused.</summary>
    public LogEntry? PausedBy { get; init; }
}

/// <summary>
/// What was really put on every program, from `setting`, `off`, `pause` and `round` entries. A round puts each number of its sheet on
/// the dials when the round was to be done, or at the entry's own time when that is earlier. A pause ends by itself: then what was on
/// the program before it is on it again. A later setting ends it sooner, a later pause takes its place. A setting beyond the dial's range is not used.
/// On a box with one dial a number of one program is on the dial of all: what runs there runs at it, what is off or paused stays so (<see cref="OneDial"/>).
/// </summary>
public sealed class SettingHistory
{
    private const double MinutesPerDay = 1440;
    private readonly Dictionary<ProgramKey, List<SettingChange>> _changes = [];

    public SettingHistory(IReadOnlyList<SiteVersion> versions, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets)
    {
        var newest = versions[^1].Site;
        var programs = new CoveredPrograms(versions);
        foreach (var entry in log)
        {
            var (from, said) = Times(entry, newest, sheets);
            switch (entry.Kind)
            {
                case LogKind.Setting when entry.Value is { } percent:
                    // Off with an end is what a returned sheet says of a pause.
                    AddSetting(entry, [.. programs.By(entry.Where).Where(p => !ImpossibleSettings.Is(entry, p, versions))], new SettingChange(from, said, new Setting(percent)) { Ends = percent == 0 && entry.Sheet is not null ? entry.Until?.Instant(newest.Clock) : null, PausedBy = entry, IsBySheet = entry.Sheet is not null }, versions);
                    break;
                case LogKind.Setting when string.Equals(entry.Text, LogEntry.NotTurned, StringComparison.Ordinal):
                    AddNotTurned(entry, said, programs, versions, sheets);
                    break;
                case LogKind.Off:
                    AddToAll(programs.By(entry.Where), new SettingChange(from, said, Setting.Off) { IsBySheet = entry.Sheet is not null });
                    break;
                case LogKind.Pause when entry.Value is { } minutes:
                    AddToAll(programs.By(entry.Where), new SettingChange(from, said, Setting.Off) { Ends = PauseEnd(newest.Clock, from, (int)Math.Round(minutes / MinutesPerDay)), PausedBy = entry, IsBySheet = entry.Sheet is not null });
                    break;
                case LogKind.Round when entry.Sheet is { } date:
                    AddRound(entry, said, date, versions, sheets);
                    break;
                default:
                    break;
            }
        }

        foreach (var (_, list) in _changes)
        {
            // Stable: of two changes at one instant the later arrival wins.
            var ordered = list.OrderBy(c => c.From).ToList();
            list.Clear();
            list.AddRange(ordered);
        }
    }

    private SettingHistory()
    {
    }

    /// <summary>Settings that have always been on the programs: of a reckoning without a logbook.</summary>
    internal static SettingHistory Always(IEnumerable<(ProgramKey Program, Setting Setting)> settings)
    {
        var history = new SettingHistory();
        foreach (var (program, setting) in settings)
        {
            history.Add(program, new SettingChange(DateTimeOffset.MinValue, DateTimeOffset.MinValue, setting));
        }

        return history;
    }

    /// <summary>The setting of a program at an instant.</summary>
    public SettingInForce At(ProgramKey program, DateTimeOffset instant)
    {
        if (!_changes.TryGetValue(program, out var list))
        {
            return new SettingInForce(Setting.Full, Confirmed: false);
        }

        bool confirmed = false, pauseKnown = false;
        Setting? dial = null;
        for (var i = list.Count - 1; i >= 0; i--)
        {
            if (list[i].From > instant || list[i].IsNotTurned)
            {
                continue;
            }

            if (list[i].IsDialOnly)
            {
                confirmed = true;
                dial ??= list[i].Setting;
                continue;
            }

            if (list[i].Ends is { } ends)
            {
                if (!pauseKnown && instant < ends)
                {
                    return new SettingInForce(Setting.Off, Confirmed: true) { PausedUntil = ends, PausedBy = list[i].PausedBy };
                }

                pauseKnown = true;
                continue;
            }

            confirmed = true;
            if (list[i].Setting is { } setting)
            {
                return new SettingInForce(setting.IsOff ? setting : dial ?? setting, confirmed);
            }
        }

        return new SettingInForce(dial ?? Setting.Full, confirmed);
    }

    /// <summary>The last setting above 0 % before an instant; 100 % when there is none.</summary>
    public Setting LastRunning(ProgramKey program, DateTimeOffset instant) =>
        _changes.TryGetValue(program, out var list)
            ? list.LastOrDefault(c => c.From <= instant && c.Setting is { IsOff: false })?.Setting ?? Setting.Full
            : Setting.Full;

    /// <summary>Since when a program is off at an instant, UTC; null = it runs, or is only paused.</summary>
    public DateTimeOffset? OffSince(ProgramKey program, DateTimeOffset instant)
    {
        if (!_changes.TryGetValue(program, out var list))
        {
            return null;
        }

        DateTimeOffset? since = null;
        foreach (var change in list.Where(c => c.From <= instant && c.Setting is not null && c.Ends is null && !c.IsDialOnly))
        {
            since = change.Setting!.Value.IsOff ? since ?? change.From : null;
        }

        return since;
    }

    /// <summary>Whether a program that is off or paused at an instant is so because a sheet asked for it, rather than by somebody's own word.</summary>
    public bool IsOffBySheet(ProgramKey program, DateTimeOffset instant) =>
        _changes.TryGetValue(program, out var list) && list.LastOrDefault(c => c.From <= instant && c.Setting is not null && !c.IsDialOnly && (c.Ends is null || instant < c.Ends)) is { Setting.IsOff: true, IsBySheet: true };

    /// <summary>When a pause of some days ends: the same time of day, so many dates later.</summary>
    public static DateTimeOffset PauseEnd(SiteClock clock, DateTimeOffset from, int days)
    {
        var local = clock.ToLocal(from);
        return clock.ToInstant(DateOnly.FromDateTime(local.DateTime).AddDays(days), TimeOnly.FromDateTime(local.DateTime));
    }

    /// <summary>
    /// Whether somebody has said what became of a sheet of some instant: anything about the program's setting since, or that nothing was turned for that sheet. The latter
    /// leaves an earlier sheet's question as it is, since nobody read the dial.
    /// </summary>
    /// <param name="program">Which.</param>
    /// <param name="asOf">The sheet's as-of instant, UTC.</param>
    /// <param name="onItsDial">Only what was said of another program on the one dial of its box; false = only of the program itself.</param>
    public bool IsAnswered(ProgramKey program, DateTimeOffset asOf, bool onItsDial = false) =>
        _changes.TryGetValue(program, out var list) && list.Exists(c => c.IsDialOnly == onItsDial && c.Said > asOf && (c.NotTurnedOf is null || c.NotTurnedOf <= asOf));

    /// <summary>When somebody last said what is on the program, UTC, rather than that nothing was turned; null = never.</summary>
    public DateTimeOffset? LastNumber(ProgramKey program) =>
        _changes.TryGetValue(program, out var list) ? list.Where(c => c.Setting is not null).Max(c => (DateTimeOffset?)c.Said) : null;

    /// <summary>
    /// From when on an entry counts, and when it was said. An answer to a sheet cannot have been carried out before the sheet was there, and was said after it was made, in whatever minute
    /// it is told; what the dial showed before answers nothing. `round` names its sheet: see <see cref="AddRound"/>.
    /// </summary>
    private static (DateTimeOffset From, DateTimeOffset Said) Times(LogEntry entry, Site site, IReadOnlyList<IssuedSheet> sheets)
    {
        var time = entry.Time.Instant(site.Clock);
        if (entry.Kind == LogKind.Round || entry.Sheet is not { } date || sheets.FirstOrDefault(s => s.Date == date && s.Issue == entry.Issue) is not { } sheet)
        {
            return (time, time);
        }

        var from = sheet.AsOf > time && site.Report.IsAfterRound(site.Clock, date, sheet.AsOf) ? sheet.AsOf : time;
        return (from, from <= sheet.AsOf && !string.Equals(entry.Text, LogEntry.Found, StringComparison.Ordinal) ? sheet.AsOf.AddTicks(1) : from);
    }

    private void AddToAll(IEnumerable<ProgramKey> programs, SettingChange change)
    {
        foreach (var program in programs)
        {
            Add(program, change);
        }
    }

    private void AddSetting(LogEntry entry, List<ProgramKey> programs, SettingChange change, IReadOnlyList<SiteVersion> versions)
    {
        AddToAll(programs, change);
        if (entry.Where.Kind == PlaceKind.Program && new ProgramKey(entry.Where.Name, entry.Where.Item) is var program && programs.Contains(program))
        {
            AddToDial(program, change, versions, entry.Time.Date);
        }
    }

    /// <summary>A returned sheet says that nothing was turned: no number, and no answer to what an earlier sheet asked for.</summary>
    private void AddNotTurned(LogEntry entry, DateTimeOffset said, CoveredPrograms programs, IReadOnlyList<SiteVersion> versions, IReadOnlyList<IssuedSheet> sheets)
    {
        var program = new ProgramKey(entry.Where.Name, entry.Where.Item);
        if (!programs.Has(program) || sheets.FirstOrDefault(s => s.Date == entry.Sheet && s.Issue == entry.Issue) is not { } sheet)
        {
            return;
        }

        var change = SettingChange.NotTurned(said, sheet);
        Add(program, change);
        foreach (var other in OneDial.Others(program, versions, sheet.Date))
        {
            Add(other, change with { IsDialOnly = true });
        }
    }

    /// <summary>A number of one program, on the dial of the others of its box.</summary>
    private void AddToDial(ProgramKey program, SettingChange change, IReadOnlyList<SiteVersion> versions, DateOnly date)
    {
        if (change.Setting is { IsOff: false })
        {
            foreach (var other in OneDial.Others(program, versions, date))
            {
                Add(other, change with { IsDialOnly = true });
            }
        }
    }

    private void AddRound(LogEntry entry, DateTimeOffset said, DateOnly date, IReadOnlyList<SiteVersion> versions, IReadOnlyList<IssuedSheet> sheets)
    {
        var sheet = sheets
            .Where(s => s.Date == date && (entry.Issue is null ? s.AsOf <= said : s.Issue == entry.Issue))
            .MaxBy(s => s.Issue);
        if (sheet is null)
        {
            return;
        }

        var site = SiteVersions.On(versions, date);
        var doneBy = site.RoundDone(date);
        doneBy = doneBy > sheet.AsOf ? doneBy : sheet.AsOf;
        var from = said < doneBy ? said : doneBy;
        said = said > sheet.AsOf ? said : sheet.AsOf.AddTicks(1);
        var isSecondRound = site.Report.IsAfterRound(site.Clock, date, sheet.AsOf);
        foreach (var line in sheet.Lines)
        {
            if (!line.Asks && isSecondRound)
            {
                // It says nothing of what the date's first round asked for.
                continue;
            }

            if (entry.Except.Any(e => e.Covers(line.Program)))
            {
                Add(line.Program, SettingChange.NotTurned(said, sheet));
                continue;
            }

            if (!line.Asks)
            {
                // Answered: there was nothing to turn, so what was on it stays.
                Add(line.Program, new SettingChange(from, said, Setting: null));
                continue;
            }

            var change = new SettingChange(from, said, line.Percent is { } percent ? new Setting(percent) : Setting.Off)
            {
                Ends = line.PauseDays is { } days ? PauseEnd(site.Clock, from, days) : null,
                PausedBy = entry,
                IsBySheet = true,
            };
            Add(line.Program, change);
            AddToDial(line.Program, change, versions, date);
        }
    }

    private void Add(ProgramKey program, SettingChange change)
    {
        if (!_changes.TryGetValue(program, out var list))
        {
            _changes[program] = list = [];
        }

        list.Add(change);
    }
}
