using System.Collections.Concurrent;

namespace DailyAdjust.Core.Sites;

/// <summary>
/// The site's clock: local calendar days of 23, 24 or 25 hours, and the instants behind a time of day.
/// A time in the hour that spring skips is the instant at which the skipped hour ends; a time in the hour that
/// autumn repeats is the first of the two.
/// </summary>
public sealed class SiteClock(TimeZoneInfo zone) : IEquatable<SiteClock>
{
    /// <summary>So far on either side of a time of day its instant lies, whatever the offset; no zone moves its clocks twice within it.</summary>
    private static readonly TimeSpan Around = TimeSpan.FromDays(1);

    /// <summary>By date: the offset of a day near which the clocks are not moved; null = they are. A zone's rules are long to ask, and a night's starts ask for the same few days.</summary>
    private readonly ConcurrentDictionary<DateOnly, TimeSpan?> _plainDays = new();

    /// <summary>The IANA name of the zone.</summary>
    public string ZoneId => zone.Id;

    /// <summary>The first instant of the date, UTC. (Zones exist in which 00:00 is skipped; the day then begins later.)</summary>
    public DateTimeOffset DayStart(DateOnly date) => ToInstant(date, TimeOnly.MinValue);

    /// <summary>The first instant of the next date, UTC.</summary>
    public DateTimeOffset DayEnd(DateOnly date) => DayStart(date.AddDays(1));

    /// <summary>The instant of a time of day on a date, UTC.</summary>
    public DateTimeOffset ToInstant(DateOnly date, TimeOnly time)
    {
        var local = date.ToDateTime(time, DateTimeKind.Unspecified);
        if (!_plainDays.TryGetValue(date, out var plain))
        {
            _plainDays[date] = plain = OffsetIfSame(date.ToDateTime(TimeOnly.MinValue), date.ToDateTime(TimeOnly.MaxValue));
        }

        return plain is { } offset ? new DateTimeOffset(local, offset).ToUniversalTime() : AllInstants(local)[0];
    }

    /// <summary>The instant of a time of day on a clock that stays on standard time all year, UTC.</summary>
    public DateTimeOffset ToInstantStandard(DateOnly date, TimeOnly time) =>
        new DateTimeOffset(date.ToDateTime(time, DateTimeKind.Unspecified), zone.BaseUtcOffset).ToUniversalTime();

    /// <summary>The instant as the site's clock shows it.</summary>
    public DateTimeOffset ToLocal(DateTimeOffset instant) => TimeZoneInfo.ConvertTime(instant, zone);

    /// <summary>The site's calendar date at an instant.</summary>
    public DateOnly DateOf(DateTimeOffset instant) => DateOnly.FromDateTime(ToLocal(instant).DateTime);

    /// <summary>UTC offset in force at an instant.</summary>
    public TimeSpan OffsetAt(DateTimeOffset instant) => zone.GetUtcOffset(instant);

    /// <summary>When the clocks are moved on a date, UTC, and by how much (forward: above 0); null = they are not.</summary>
    public (DateTimeOffset At, TimeSpan By)? ChangeOn(DateOnly date)
    {
        DateTimeOffset before = DayStart(date), after = DayEnd(date);
        var by = OffsetAt(after) - OffsetAt(before);
        return by == TimeSpan.Zero ? null : (ChangeBetween(before, after), by);
    }

    /// <summary>Both instants of a repeated local time, earliest first; one instant otherwise (a skipped time gives the end of the gap).</summary>
    public IReadOnlyList<DateTimeOffset> AllInstants(DateTime local)
    {
        var instants = Instants(local);
        return instants.Count > 0 ? instants : [ChangeBetween(AsUtc(local, -Around), AsUtc(local, Around))];
    }

    /// <summary>Whether the local time does not exist on the site's clock.</summary>
    public bool IsSkipped(DateTime local) => Instants(local).Count == 0;

    public bool Equals(SiteClock? other) => other is not null && string.Equals(ZoneId, other.ZoneId, StringComparison.Ordinal);

    public override bool Equals(object? obj) => Equals(obj as SiteClock);

    public override int GetHashCode() => ZoneId.GetHashCode(StringComparison.Ordinal);

    /// <summary>As if the clock showed UTC, so much later; within what a calendar has.</summary>
    private static DateTimeOffset AsUtc(DateTime local, TimeSpan later = default) => new(Math.Clamp(local.Ticks + later.Ticks, DateTime.MinValue.Ticks, DateTime.MaxValue.Ticks), TimeSpan.Zero);

    /// <summary>Instants at which the site's clock shows a time. Only what offset is in force at an instant is asked of the zone: which local times it skips or repeats, the library does not know of every zone.</summary>
    private IReadOnlyList<DateTimeOffset> Instants(DateTime local)
    {
        if (OffsetIfSame(local, local) is { } offset)
        {
            return [AsUtc(local) - offset];
        }

        TimeSpan[] offsets = [OffsetAt(AsUtc(local, -Around)), OffsetAt(AsUtc(local, Around))];
        return [.. offsets.Where(o => OffsetAt(AsUtc(local) - o) == o).Select(o => AsUtc(local) - o).Order()];
    }

    /// <summary>The offset from before one local time until after another; null = the clocks are moved in between, or near it.</summary>
    private TimeSpan? OffsetIfSame(DateTime from, DateTime to)
    {
        var offset = OffsetAt(AsUtc(from, -Around));
        return OffsetAt(AsUtc(to, Around)) == offset ? offset : null;
    }

    /// <summary>When the offset changes, to the minute, as in every zone since 1972.</summary>
    private DateTimeOffset ChangeBetween(DateTimeOffset before, DateTimeOffset after)
    {
        var was = OffsetAt(before);
        while (after - before > TimeSpan.FromMinutes(1))
        {
            var middle = before.AddMinutes(Math.Floor((after - before).TotalMinutes / 2));
            (before, after) = OffsetAt(middle) == was ? (middle, after) : (before, middle);
        }

        return after;
    }
}
