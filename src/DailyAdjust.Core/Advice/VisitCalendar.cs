using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// When somebody comes to each program's controller: its visit days, with single visits moved or added by `visit` entries.
/// An entry without an end says that somebody is there on its date. One with an end moves the next visit (the day's own while its round is not yet to be done) to the date it names, earlier or later.
/// </summary>
internal sealed class VisitCalendar
{
    private const int DaysAhead = 370;
    private readonly Site _site;
    private readonly List<LogEntry> _moves;
    private readonly List<LogEntry> _unplanned;
    private readonly Dictionary<ProgramKey, IReadOnlyList<MovedVisit>> _moved = [];

    public VisitCalendar(Site site, IReadOnlyList<LogEntry> log)
    {
        _site = site;
        _moves = [.. log.Where(e => e.Kind == LogKind.Visit && e.Until is not null).OrderBy(e => e.Time)];
        _unplanned = [.. log.Where(e => e.Kind == LogKind.Visit && e.Until is null)];
    }

    public bool IsVisit(PlannedProgram program, DateOnly date)
    {
        if (_unplanned.Exists(e => e.Time.Date == date && e.Where.Covers(program.Key)))
        {
            return true;
        }

        return IsPlanned(program, date, _moved.TryGetValue(program.Key, out var known) ? known : _moved[program.Key] = Moved(program));
    }

    /// <summary>The first visit day after a date; a year on where there is none in sight.</summary>
    public DateOnly NextAfter(PlannedProgram program, DateOnly date)
    {
        var next = date.AddDays(1);
        while (!IsVisit(program, next) && next.DayNumber - date.DayNumber < DaysAhead)
        {
            next = next.AddDays(1);
        }

        return next;
    }

    /// <summary>Visit days from a date back to another, the last first.</summary>
    public IEnumerable<DateOnly> Back(PlannedProgram program, DateOnly from, DateOnly to)
    {
        for (var date = from; date >= to; date = date.AddDays(-1))
        {
            if (IsVisit(program, date))
            {
                yield return date;
            }
        }
    }

    private static bool IsPlanned(PlannedProgram program, DateOnly date, IReadOnlyList<MovedVisit> moved) =>
        moved.Aggregate(program.Program.Visit.Includes(date), (visit, move) => date == move.To || (visit && (date < move.First || date > move.Last)));

    /// <summary>Each entry moves the visit that is next with what was moved before it: none is left up to its new date, and where that is earlier, none on the old one.</summary>
    private List<MovedVisit> Moved(PlannedProgram program)
    {
        var moved = new List<MovedVisit>();
        foreach (var entry in _moves.Where(m => m.Where.Covers(program.Key)))
        {
            var stillToday = entry.Time.Clock is { } time && time < _site.Report.RoundDoneBy;
            var next = stillToday ? entry.Time.Date : entry.Time.Date.AddDays(1);
            for (var i = 0; i < DaysAhead && !IsPlanned(program, next, moved); i++)
            {
                next = next.AddDays(1);
            }

            var to = entry.Until!.Value.Date;
            moved.Add(new MovedVisit(next, to > next ? to.AddDays(-1) : next, to));
        }

        return moved;
    }

    /// <summary>Nobody comes from one date through another, but on the third, which may lie before them.</summary>
    private readonly record struct MovedVisit(DateOnly First, DateOnly Last, DateOnly To);
}
