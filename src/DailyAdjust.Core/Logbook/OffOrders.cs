using DailyAdjust.Core.Phrases;
using DailyAdjust.Core.Sites;

namespace DailyAdjust.Core.Logbook;

/// <summary>What a program must not run for.</summary>
public enum OffReason
{
    /// <summary>Somebody said so.</summary>
    Hold,

    /// <summary>What was applied has to stay on the leaves.</summary>
    NoWater,

    /// <summary>People on the course.</summary>
    Event,

    /// <summary>A cold night, where the site holds for one.</summary>
    Cold,

    /// <summary>A windy night, where the site holds for one.</summary>
    Wind,
}

/// <summary>A span of time in which no start may run.</summary>
/// <param name="Reason">What kind of order it is.</param>
/// <param name="Where">What it stops.</param>
/// <param name="From">UTC; the first instant that is stopped.</param>
/// <param name="Ends">UTC, not stopped any more; null = open.</param>
/// <param name="Until">Its end as it was entered (a bare date: through that date); null = open.</param>
/// <param name="Note">In the words of the person who entered it.</param>
/// <param name="By">Who entered it; empty = not said.</param>
public sealed record OffOrder(OffReason Reason, Place Where, DateTimeOffset From, DateTimeOffset? Ends, LogTime? Until, Phrase Note, string By)
{
    public bool Hits(DateTimeOffset instant) => From <= instant && (Ends is null || instant < Ends);
}

/// <summary>
/// Spans in which programs must not run. Hold and no-water begin at the time of their entry, which may lie ahead (a bare date: as that
/// date begins); an event begins so long before its end as it says, whenever it was entered.
/// </summary>
public sealed class OffOrders
{
    private readonly List<OffOrder> _orders;

    /// <param name="clock">The site's.</param>
    /// <param name="log">Entries that are known.</param>
    /// <param name="others">Orders that nobody entered: those of the night's weather.</param>
    public OffOrders(SiteClock clock, IReadOnlyList<LogEntry> log, IEnumerable<OffOrder>? others = null) =>
        _orders = [.. log.Select(e => Of(clock, e)).OfType<OffOrder>().Concat(others ?? []).OrderBy(o => o.From)];

    /// <summary>Nothing was ever ordered.</summary>
    public bool IsEmpty => _orders.Count == 0;

    /// <summary>Orders in force at an instant, by their begin.</summary>
    public IEnumerable<OffOrder> At(DateTimeOffset instant) => _orders.Where(o => o.Hits(instant));

    /// <summary>Orders that are in force at an instant or begin after it, by their begin.</summary>
    public IEnumerable<OffOrder> NotOver(DateTimeOffset instant) => _orders.Where(o => o.Ends is null || instant < o.Ends);

    private static OffOrder? Of(SiteClock clock, LogEntry entry)
    {
        var ends = entry.Until?.Instant(clock);
        return entry.Kind switch
        {
            LogKind.Hold => new OffOrder(OffReason.Hold, entry.Where, entry.Time.Begin(clock), ends, entry.Until, Phrase.Verbatim(entry.Note), entry.By),
            LogKind.NoWater => new OffOrder(OffReason.NoWater, entry.Where, entry.Time.Begin(clock), ends, entry.Until, Phrase.Verbatim(entry.Note), entry.By),
            LogKind.Event when entry.Value is { } minutes && ends is { } end =>
                new OffOrder(OffReason.Event, entry.Where, end.AddMinutes(-minutes), ends, entry.Until, Phrase.Verbatim(entry.Note), entry.By),
            _ => null,
        };
    }
}
