using DailyAdjust.Core.Logbook;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Tests.Plain;

/// <summary>The dates on which somebody comes to a program's box; a `visit` entry moves the next one.</summary>
internal sealed class PlainVisits
{
    private readonly VisitDays _regular;
    private readonly HashSet<DateOnly> _dropped = [];
    private readonly HashSet<DateOnly> _added = [];

    public PlainVisits(Site site, ProgramKey key, VisitDays regular, IEnumerable<LogEntry> log)
    {
        _regular = regular;
        foreach (var entry in log.Where(e => e.Kind == LogKind.Visit && e.Until is not null && PlainLog.Covers(e.Where, key)))
        {
            // The next visit is the first whose round is not yet done when the entry is made.
            var said = entry.Time.Instant(site.Clock);
            var next = entry.Time.Date;
            while (!Includes(next) || site.Clock.ToInstant(next, site.Report.RoundDoneBy) <= said)
            {
                next = next.AddDays(1);
            }

            _dropped.Add(next);
            _added.Remove(next);
            _added.Add(entry.Until!.Value.Date);
        }
    }

    public bool Includes(DateOnly date) => _added.Contains(date) || (_regular.Includes(date) && !_dropped.Contains(date));

    public DateOnly NextAfter(DateOnly date)
    {
        do
        {
            date = date.AddDays(1);
        }
        while (!Includes(date));
        return date;
    }
}
