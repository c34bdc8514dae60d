using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>
/// Did it run? Which share of the due minutes a start really ran, from `ran` entries. With a time an entry covers the starts of the
/// 24 hours up to it; with a bare date that date's starts. Station over program over controller; then the latest wins.
/// </summary>
public sealed class RanHistory
{
    private static readonly TimeSpan Covered = TimeSpan.FromHours(24);
    private readonly List<(LogEntry Entry, DateTimeOffset At, int Rank)> _entries = [];

    public RanHistory(SiteClock clock, IReadOnlyList<LogEntry> log)
    {
        foreach (var entry in log.Where(e => e.Kind == LogKind.Ran && e.Value is not null))
        {
            _entries.Add((entry, entry.Time.Instant(clock), Rank(entry.Where.Kind)));
        }

        // Stable: of equals the later arrival stays last and wins.
        _entries = [.. _entries.OrderBy(e => e.Rank).ThenBy(e => e.At)];
    }

    /// <summary>Share of the due minutes that ran, 0 or more; 1 where nobody said anything.</summary>
    /// <param name="program">The program that started.</param>
    /// <param name="station">One of its stations.</param>
    /// <param name="date">The start's date.</param>
    /// <param name="start">The start's instant.</param>
    public double Share(ProgramKey program, Station station, DateOnly date, DateTimeOffset start)
    {
        for (var i = _entries.Count - 1; i >= 0; i--)
        {
            var (entry, at, _) = _entries[i];
            if (CoversStart(entry, at, date, start) && CoversPlace(entry.Where, program, station))
            {
                return entry.Value!.Value / 100;
            }
        }

        return 1;
    }

    /// <summary>Whether anybody said whether this start of the whole program ran.</summary>
    public bool IsAnswered(ProgramKey program, DateOnly date, DateTimeOffset start) => _entries.Exists(e =>
        CoversStart(e.Entry, e.At, date, start)
        && e.Entry.Where.Covers(program));

    private static bool CoversStart(LogEntry entry, DateTimeOffset at, DateOnly date, DateTimeOffset start) =>
        entry.Time.Clock is null ? entry.Time.Date == date : start > at - Covered && start <= at;

    private static int Rank(PlaceKind kind) => kind switch
    {
        PlaceKind.Station => 3,
        PlaceKind.Program => 2,
        PlaceKind.Controller or PlaceKind.Area => 1,
        _ => 0,
    };

    private static bool CoversPlace(Place where, ProgramKey program, Station station) =>
        where.Kind == PlaceKind.Program ? where.Covers(program) : where.Covers(station);
}
