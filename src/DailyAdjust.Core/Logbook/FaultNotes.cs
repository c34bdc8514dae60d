using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>A program that is off and has a note of what is wrong with it.</summary>
/// <param name="Since">Since when it is off, UTC.</param>
/// <param name="Note">The newest note on it.</param>
/// <param name="By">Who wrote it; empty = not said.</param>
/// <param name="IsOwnNote">A `note` on the program; otherwise only what stood beside `off`.</param>
public sealed record Fault(DateTimeOffset Since, string Note, string By, bool IsOwnNote);

/// <summary>
/// Programs that somebody turned off with a note, or noted something about while they were off: such a program is asked about until
/// a setting, or its controller `checked` later.
/// </summary>
public sealed class FaultNotes(SiteClock clock, IReadOnlyList<LogEntry> log, SettingHistory settings)
{
    private readonly List<(LogEntry Entry, DateTimeOffset At)> _said =
        [.. log.Where(e => e.Kind is LogKind.Off or LogKind.Note or LogKind.Checked).Select(e => (e, e.Time.Instant(clock))).OrderBy(e => e.Item2)];

    /// <summary>Null = it runs, or is off for no reason that anybody noted.</summary>
    public Fault? Of(ProgramKey program, DateTimeOffset instant)
    {
        if (settings.OffSince(program, instant) is not { } since)
        {
            return null;
        }

        Fault? fault = null;
        var own = false;
        foreach (var (entry, at) in _said.Where(e => e.At >= since && e.At <= instant))
        {
            if (entry.Kind == LogKind.Checked)
            {
                (fault, own) = entry.Where.Covers(program) ? (null, false) : (fault, own);
            }
            else if (entry.Note.Length > 0 && entry.Where.Covers(program) && (entry.Kind == LogKind.Off || entry.Where.Kind == PlaceKind.Program))
            {
                own |= entry.Kind == LogKind.Note;
                fault = new Fault(since, entry.Note, entry.By, own);
            }
        }

        return fault;
    }
}
