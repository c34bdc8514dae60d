using DailyAdjust.Core.Irrigation;
using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Advice;

/// <summary>
/// When somebody comes to each program's controller: its visit days, with single visits moved or added by `visit` entries.
/// An entry without an end says that somebody is there on its date. One with an end moves the next visit (the day's own while its round is not yet to be done) to the date it names.
/// </summary>
internal sealed class VisitCalendar
{
    private const int DaysAhead = 370;
    private readonly Site _site;
    private readonly List<LogEntry> _moves;
    private readonly List<LogEntry> _unplanned;

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

        var visit = program.Program.Visit.Includes(date);
        foreach (var move in _moves.Where(m => m.Where.Covers(program.Key)))
        {
            var to = move.Until!.Value.Date;
            var from = MovedFrom(program, move);
            if (from <= date && date < to)
            {
                visit = false;
            }
            else if (date == to)
            {
                visit = true;
            }
        }

        return visit;
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

    private DateOnly MovedFrom(PlannedProgram program, LogEntry move)
    {
        var stillToday = move.Time.Clock is { } time && time < _site.Report.RoundDoneBy;
        var from = stillToday ? move.Time.Date : move.Time.Date.AddDays(1);
        for (var i = 0; i < DaysAhead && !program.Program.Visit.Includes(from); i++)
        {
            from = from.AddDays(1);
        }

        return from;
    }
}
