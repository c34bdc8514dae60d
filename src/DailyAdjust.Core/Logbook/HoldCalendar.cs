using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>
/// Holds that people entered, no-water orders and events: where, why and until when. A bare date holds through that date; an event holds so long
/// before its end as it says.
/// </summary>
public sealed class HoldCalendar
{
    private readonly List<HoldInForce> _holds;

    public HoldCalendar(SiteClock clock, IReadOnlyList<LogEntry> log) =>
        _holds = [.. log
            .Where(e => e.Kind is LogKind.Hold or LogKind.NoWater || (e.Kind == LogKind.Event && e.Value is not null && e.Until is not null))
            .Select(e => new HoldInForce(e.Where, Begin(clock, e), e.Until?.Instant(clock), e.Until?.Date, Reason(e)))
            .OrderBy(h => h.From)];

    /// <summary>Holds in force at an instant, earliest first.</summary>
    public IEnumerable<HoldInForce> At(DateTimeOffset instant) =>
        _holds.Where(h => h.From <= instant && (h.Ends is null || instant < h.Ends));

    private static DateTimeOffset Begin(SiteClock clock, LogEntry entry) =>
        entry.Kind == LogKind.Event ? entry.Until!.Value.Instant(clock).AddMinutes(-entry.Value!.Value)
        : entry.Time.Clock is null ? clock.DayStart(entry.Time.Date)
        : entry.Time.Instant(clock);

    private static string Reason(LogEntry entry)
    {
        var kind = entry.Kind switch
        {
            LogKind.NoWater => "no water",
            LogKind.Event => "event",
            _ => "",
        };
        return kind.Length == 0 ? entry.Note : entry.Note.Length == 0 ? kind : $"{kind}, {entry.Note}";
    }
}

/// <summary>One hold.</summary>
/// <param name="Where">What it stops.</param>
/// <param name="From">UTC.</param>
/// <param name="Ends">UTC; null = open.</param>
/// <param name="Until">The last date; null = open.</param>
/// <param name="Reason">In the words of the person who entered it.</param>
public sealed record HoldInForce(Place Where, DateTimeOffset From, DateTimeOffset? Ends, DateOnly? Until, string Reason);
