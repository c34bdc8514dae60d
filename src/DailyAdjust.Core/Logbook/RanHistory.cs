using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>
/// Did it run? Which share of the due minutes a start really ran, from `ran` entries. With a time an entry covers the starts of the
/// 24 hours up to it; with a bare date that date's starts; with an end it covers what was due to run from its time to its end, station
/// by station. Station over program over controller; then the latest wins, one with an end by its end.
/// </summary>
public sealed class RanHistory
{
    private static readonly TimeSpan Covered = TimeSpan.FromHours(24);
    private readonly List<Said> _entries = [];
    private readonly List<Said> _spans;

    /// <summary>Those without an end, by every date on whose starts they can have a say: a long history costs a day nothing.</summary>
    private readonly Dictionary<int, List<Said>> _byDay = [];

    public RanHistory(SiteClock clock, IReadOnlyList<LogEntry> log)
    {
        foreach (var entry in log.Where(e => e.Kind == LogKind.Ran && e.Value is not null))
        {
            _entries.Add(entry.Until is { } until
                ? new Said(entry, until.Instant(clock), Rank(entry.Where.Kind), entry.Time.Begin(clock))
                : new Said(entry, entry.Time.Instant(clock), Rank(entry.Where.Kind), null));
        }

        // Stable: of equals the later arrival stays last and wins.
        _entries = [.. _entries.OrderBy(e => e.Rank).ThenBy(e => e.At)];
        _spans = [.. _entries.Where(e => e.From is not null)];
        foreach (var said in _entries.Where(e => e.From is null))
        {
            // A start's own date is that of its controller's clock, which may be another than the entry's.
            var date = said.Entry.Time.Date.DayNumber;
            for (var day = date - 2; day <= date + 1; day++)
            {
                (_byDay.TryGetValue(day, out var known) ? known : _byDay[day] = []).Add(said);
            }
        }
    }

    /// <summary>Share of the due minutes that ran, 0 or more.</summary>
    /// <param name="program">The program that started.</param>
    /// <param name="station">One of its stations.</param>
    /// <param name="date">The start's date.</param>
    /// <param name="start">The start's instant.</param>
    /// <param name="run">When the station was due to run, longer than nothing; null = entries with an end are not looked at.</param>
    /// <param name="untold">The share where nobody said anything.</param>
    public double Share(ProgramKey program, Station station, DateOnly date, DateTimeOffset start, (DateTimeOffset Begins, DateTimeOffset Ends)? run = null, double untold = 1)
    {
        if (run is { } due && _spans.Exists(s => s.Touches(due.Begins, due.Ends) && CoversPlace(s.Entry.Where, program, station)))
        {
            return ShareInParts(program, station, date, start, due, untold);
        }

        if (!_byDay.TryGetValue(date.DayNumber, out var entries))
        {
            return untold;
        }

        for (var i = entries.Count - 1; i >= 0; i--)
        {
            var said = entries[i];
            if (CoversStart(said, date, start) && CoversPlace(said.Entry.Where, program, station))
            {
                return said.Entry.Value!.Value / 100;
            }
        }

        return untold;
    }

    /// <summary>Whether any entry without an end may have a say in a start of one of a controller's programs on a date.</summary>
    public bool HasAnyOf(DateOnly date, string controller) => _byDay.TryGetValue(date.DayNumber, out var entries) && entries.Exists(said => said.Entry.Where.MayTouch(controller));

    /// <summary>Whether any entry with an end speaks of a span of time.</summary>
    public bool HasSpanIn(DateTimeOffset from, DateTimeOffset to) => _spans.Exists(s => s.Touches(from, to));

    /// <summary>Whether anybody said whether this start of the whole program ran.</summary>
    public bool IsAnswered(ProgramKey program, DateOnly date, DateTimeOffset start) => _entries.Exists(e =>
        CoversStart(e, date, start)
        && e.Entry.Where.Covers(program));

    /// <summary>The same, or that a part of it did not run.</summary>
    /// <param name="program">Which.</param>
    /// <param name="date">The start's date.</param>
    /// <param name="start">The start's instant.</param>
    /// <param name="finishes">When its last station was due to end.</param>
    public bool IsToldOf(ProgramKey program, DateOnly date, DateTimeOffset start, DateTimeOffset finishes) =>
        IsAnswered(program, date, start) || _spans.Exists(s => s.Touches(start, finishes) && s.Entry.Where.Covers(program));

    /// <summary>From the entry that wins down, each takes of the run what nobody before it spoke of.</summary>
    private double ShareInParts(ProgramKey program, Station station, DateOnly date, DateTimeOffset start, (DateTimeOffset Begins, DateTimeOffset Ends) run, double untold)
    {
        List<(DateTimeOffset From, DateTimeOffset To)> open = [run];
        var ran = 0.0;
        for (var i = _entries.Count - 1; i >= 0 && open.Count > 0; i--)
        {
            var said = _entries[i];
            if (!CoversPlace(said.Entry.Where, program, station) || (said.From is null && !CoversStart(said, date, start)))
            {
                continue;
            }

            var (from, to) = said.From is { } begins ? (begins, said.At) : run;
            ran += said.Entry.Value!.Value / 100 * open.Sum(part => Ticks(Later(part.From, from), Earlier(part.To, to)));
            open = [.. open.SelectMany(part => new[] { (part.From, Earlier(part.To, from)), (Later(part.From, to), part.To) }).Where(part => Ticks(part.Item1, part.Item2) > 0)];
        }

        return (ran + (untold * open.Sum(part => Ticks(part.From, part.To)))) / Ticks(run.Begins, run.Ends);
    }

    private static long Ticks(DateTimeOffset from, DateTimeOffset to) => Math.Max(0, (to - from).Ticks);

    private static DateTimeOffset Later(DateTimeOffset a, DateTimeOffset b) => a > b ? a : b;

    private static DateTimeOffset Earlier(DateTimeOffset a, DateTimeOffset b) => a < b ? a : b;

    private static bool CoversStart(Said said, DateOnly date, DateTimeOffset start) => said.From is null
        && (said.Entry.Time.Clock is null ? said.Entry.Time.Date == date : start > said.At - Covered && start <= said.At);

    private static int Rank(PlaceKind kind) => kind switch
    {
        PlaceKind.Station => 3,
        PlaceKind.Program => 2,
        PlaceKind.Controller or PlaceKind.Area => 1,
        _ => 0,
    };

    private static bool CoversPlace(Place where, ProgramKey program, Station station) =>
        where.Kind == PlaceKind.Program ? where.Covers(program) : where.Covers(station);

    /// <summary>One entry.</summary>
    /// <param name="Entry">As it was entered.</param>
    /// <param name="At">Its instant; of one with an end, that end.</param>
    /// <param name="Rank">How near its place is to the station.</param>
    /// <param name="From">The begin of the span of one with an end; null = it has none.</param>
    private readonly record struct Said(LogEntry Entry, DateTimeOffset At, int Rank, DateTimeOffset? From)
    {
        public bool Touches(DateTimeOffset from, DateTimeOffset to) => From < to && At > from;
    }
}
