using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>Holds that people entered: where, why and until when. A bare date holds through that date.</summary>
public sealed class HoldCalendar
{
    private readonly List<HoldInForce> _holds;

    public HoldCalendar(SiteClock clock, IReadOnlyList<LogEntry> log) =>
        _holds = [.. log
            .Where(e => e.Kind == LogKind.Hold)
            .Select(e => new HoldInForce(e.Where, e.Time.Clock is null ? clock.DayStart(e.Time.Date) : e.Time.Instant(clock), e.Until?.Instant(clock), e.Until?.Date, e.Note))
            .OrderBy(h => h.From)];

    /// <summary>Holds in force at an instant, earliest first.</summary>
    public IEnumerable<HoldInForce> At(DateTimeOffset instant) =>
        _holds.Where(h => h.From <= instant && (h.Ends is null || instant < h.Ends));
}

/// <summary>One hold.</summary>
/// <param name="Where">What it stops.</param>
/// <param name="From">UTC.</param>
/// <param name="Ends">UTC; null = open.</param>
/// <param name="Until">The last date; null = open.</param>
/// <param name="Reason">In the words of the person who entered it.</param>
public sealed record HoldInForce(Place Where, DateTimeOffset From, DateTimeOffset? Ends, DateOnly? Until, string Reason);
