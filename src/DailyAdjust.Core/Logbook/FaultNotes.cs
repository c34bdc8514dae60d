using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>A program that is off and has a note of why: a fault, weather, anything.</summary>
/// <param name="Since">Since when it is off, UTC.</param>
/// <param name="Note">The newest note on it of what is wrong; empty = there is only the answer, which says that something was mended.</param>
/// <param name="By">Who wrote it; empty = not said.</param>
/// <param name="IsOwnNote">A `note` on the program; otherwise only what stood beside `off`.</param>
public sealed record Fault(DateTimeOffset Since, string Note, string By, bool IsOwnNote)
{
    /// <summary>When the newest note on it was written, UTC. The program was off then.</summary>
    public DateTimeOffset NotedAt { get; init; }

    /// <summary>A later note on the program or on its box says that it is mended; null = it is asked about.</summary>
    public FaultAnswer? Answer { get; init; }
}

/// <summary>A note that says that a fault is mended.</summary>
/// <param name="At">UTC.</param>
/// <param name="Where">The program, or its controller.</param>
/// <param name="Note">In the words of the person who entered it.</param>
public sealed record FaultAnswer(DateTimeOffset At, Place Where, string Note);

/// <summary>
/// Programs that somebody turned off with a note, or noted something about while they were off: such a program is asked about until
/// a setting, or its controller `checked` later, or a later note on it or on its controller that says it is mended.
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
        foreach (var (entry, at) in _said.Where(e => e.At >= since && e.At <= instant && e.Entry.Where.Covers(program)))
        {
            if (entry.Kind == LogKind.Checked)
            {
                fault = null;
            }
            else if (entry.Kind == LogKind.Note && MendedNote.Says(entry.Note))
            {
                // A note on the whole site is too far from the program to speak for it, and one on a box where nothing is noted on the program speaks of another.
                fault = entry.Where.Kind == PlaceKind.Program || (entry.Where.Kind == PlaceKind.Controller && fault is not null)
                    ? (fault ?? new Fault(since, "", "", IsOwnNote: false)) with { Answer = new(at, entry.Where, entry.Note) }
                    : fault;
            }
            else if (entry.Note.Length > 0 && (entry.Kind == LogKind.Off || entry.Where.Kind == PlaceKind.Program))
            {
                fault = new Fault(since, entry.Note, entry.By, entry.Kind == LogKind.Note || fault is { IsOwnNote: true, Answer: null }) { NotedAt = at };
            }
        }

        return fault;
    }
}
