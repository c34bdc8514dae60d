using System.Diagnostics.CodeAnalysis;
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
    private readonly Dictionary<ProgramKey, List<SettingChange>> _changes;

    /// <summary>Earlier than this only the whole logbook tells, UTC.</summary>
    private readonly DateTimeOffset _from;

    private readonly Lazy<SettingHistory> _whole;

    /// <param name="versions">Of the site, ascending by date.</param>
    /// <param name="log">In order of arrival; voided and superseded entries removed.</param>
    /// <param name="sheets">Every sheet issued so far.</param>
    /// <param name="from">The first instant that will be asked about as a rule, UTC: what lies under later numbers is then passed over, and gathered only if somebody asks for it after all. Null = all is gathered.</param>
    public SettingHistory(IReadOnlyList<SiteVersion> versions, IReadOnlyList<LogEntry> log, IReadOnlyList<IssuedSheet> sheets, DateTimeOffset? from = null)
    {
        IReadOnlyList<DialWord> words = DialWords.Of(versions, log, sheets);
        _whole = new(() => new SettingHistory(SettingChanges.Of(versions, words)));
        _from = from ?? DateTimeOffset.MinValue;
        _changes = SettingChanges.Of(versions, from is { } begin ? NeededWords.From(words, versions, begin) : words);
    }

    private SettingHistory(Dictionary<ProgramKey, List<SettingChange>> changes)
    {
        _changes = changes;
        _whole = new(this);
    }

    /// <summary>Settings that have always been on the programs: of a reckoning without a logbook.</summary>
    internal static SettingHistory Always(IEnumerable<(ProgramKey Program, Setting Setting)> settings) =>
        new(settings.ToDictionary(s => s.Program, s => (List<SettingChange>)[new(DateTimeOffset.MinValue, DateTimeOffset.MinValue, s.Setting)]));

    /// <summary>The setting of a program at an instant.</summary>
    public SettingInForce At(ProgramKey program, DateTimeOffset instant)
    {
        if (!TryGet(program, instant, out var list))
        {
            return new SettingInForce(Setting.Full, Confirmed: false);
        }

        bool confirmed = false, pauseKnown = false;
        Setting? dial = null;
        for (var i = CountUpTo(list, instant) - 1; i >= 0; i--)
        {
            if (list[i].IsNotTurned)
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
        TryGet(program, instant, out var list)
            ? list.LastOrDefault(c => c.From <= instant && c.Setting is { IsOff: false })?.Setting ?? Setting.Full
            : Setting.Full;

    /// <summary>Since when a program is off at an instant, UTC; null = it runs, or is only paused.</summary>
    public DateTimeOffset? OffSince(ProgramKey program, DateTimeOffset instant)
    {
        if (!TryGet(program, instant, out var list))
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
        TryGet(program, instant, out var list) && list.LastOrDefault(c => c.From <= instant && c.Setting is not null && !c.IsDialOnly && (c.Ends is null || instant < c.Ends)) is { Setting.IsOff: true, IsBySheet: true };

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
    /// <param name="onItsDial">Only what was said of another program on the one dial of its box, where nothing answers it of the program itself; false = only of the program itself.</param>
    public bool IsAnswered(ProgramKey program, DateTimeOffset asOf, bool onItsDial = false) =>
        _changes.TryGetValue(program, out var list) && list.Exists(c => c.IsDialOnly == onItsDial && c.Said > asOf && (c.NotTurnedOf is null || c.NotTurnedOf <= asOf));

    /// <summary>When anybody last said anything of the program's setting, UTC, but that nothing was turned: sheets made before are answered. Null = never.</summary>
    public DateTimeOffset? LastAnswer(ProgramKey program) =>
        _changes.TryGetValue(program, out var list) ? list.Where(c => c is { IsDialOnly: false, IsNotTurned: false }).Max(c => (DateTimeOffset?)c.Said) : null;

    /// <summary>When somebody last said what is on the program, UTC, rather than that nothing was turned; null = never.</summary>
    public DateTimeOffset? LastNumber(ProgramKey program) =>
        _changes.TryGetValue(program, out var list) ? list.Where(c => c.Setting is not null).Max(c => (DateTimeOffset?)c.Said) : null;

    /// <summary>How many of the changes hold from an instant or earlier.</summary>
    private static int CountUpTo(List<SettingChange> changes, DateTimeOffset instant)
    {
        var (from, to) = (0, changes.Count);
        while (from < to)
        {
            var middle = (from + to) / 2;
            (from, to) = changes[middle].From <= instant ? (middle + 1, to) : (from, middle);
        }

        return from;
    }

    /// <summary>The changes that tell what is on a program at an instant.</summary>
    private bool TryGet(ProgramKey program, DateTimeOffset instant, [NotNullWhen(true)] out List<SettingChange>? changes) =>
        (instant < _from ? _whole.Value : this)._changes.TryGetValue(program, out changes);
}
