namespace DailyAdjust.Core.Sites;

/// <summary>
/// The site's clock: local calendar days of 23, 24 or 25 hours, and the instants behind a time of day.
/// A time in the hour that spring skips is the instant at which the skipped hour ends; a time in the hour that
/// autumn repeats is the first of the two.
/// </summary>
public sealed class SiteClock(TimeZoneInfo zone) : IEquatable<SiteClock>
{
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
        if (zone.IsInvalidTime(local))
        {
            return GapEnd(local);
        }

        var offset = zone.IsAmbiguousTime(local) ? zone.GetAmbiguousTimeOffsets(local).Max() : zone.GetUtcOffset(local);
        return new DateTimeOffset(local, offset).ToUniversalTime();
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
        var (was, by) = (OffsetAt(before), OffsetAt(after) - OffsetAt(before));
        if (by == TimeSpan.Zero)
        {
            return null;
        }

        while (after - before > TimeSpan.FromMinutes(1))
        {
            var middle = before.AddMinutes(Math.Floor((after - before).TotalMinutes / 2));
            (before, after) = OffsetAt(middle) == was ? (middle, after) : (before, middle);
        }

        return (after, by);
    }

    /// <summary>Both instants of a repeated local time, earliest first; one instant otherwise (a skipped time gives the end of the gap).</summary>
    public IReadOnlyList<DateTimeOffset> AllInstants(DateTime local)
    {
        var unspecified = DateTime.SpecifyKind(local, DateTimeKind.Unspecified);
        if (zone.IsInvalidTime(unspecified))
        {
            return [GapEnd(unspecified)];
        }

        return zone.IsAmbiguousTime(unspecified)
            ? [.. zone.GetAmbiguousTimeOffsets(unspecified).OrderDescending().Select(o => new DateTimeOffset(unspecified, o).ToUniversalTime())]
            : [new DateTimeOffset(unspecified, zone.GetUtcOffset(unspecified)).ToUniversalTime()];
    }

    /// <summary>Whether the local time does not exist on the site's clock.</summary>
    public bool IsSkipped(DateTime local) => zone.IsInvalidTime(DateTime.SpecifyKind(local, DateTimeKind.Unspecified));

    public bool Equals(SiteClock? other) => other is not null && string.Equals(ZoneId, other.ZoneId, StringComparison.Ordinal);

    public override bool Equals(object? obj) => Equals(obj as SiteClock);

    public override int GetHashCode() => ZoneId.GetHashCode(StringComparison.Ordinal);

    private DateTimeOffset GapEnd(DateTime local)
    {
        // Gaps are whole minutes in every zone since 1972; the first valid minute after the asked one ends the gap.
        var probe = new DateTime(local.Ticks - (local.Ticks % TimeSpan.TicksPerMinute), DateTimeKind.Unspecified);
        while (zone.IsInvalidTime(probe))
        {
            probe = probe.AddMinutes(1);
        }

        return new DateTimeOffset(probe, zone.GetUtcOffset(probe)).ToUniversalTime();
    }
}
