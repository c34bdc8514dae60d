using DailyAdjust.Core.Sites;

namespace DailyAdjust.Files.Guess;

/// <summary>What a file's own words say of its times.</summary>
internal static class SaidOfTime
{
    /// <param name="zone">What stands behind every time, see <see cref="TimeOfDayForm.Zone"/>.</param>
    /// <param name="headers">Of the columns of time.</param>
    /// <param name="above">The lines above the header.</param>
    /// <param name="winterOffset">The site's standard offset from UTC; null = its zone is not known.</param>
    public static Answer<StampClock>? Clock(string zone, IReadOnlyList<string> headers, IReadOnlyList<string> above, TimeSpan? winterOffset)
    {
        switch (zone)
        {
            case TimeOfDayForm.Offset:
                return new(StampClock.Utc, true, "every time carries its offset");
            case "Z":
                return new(StampClock.Utc, true, "the times are in UTC by their form");
            case { Length: > 0 }:
                return ClockWords.Of(zone) is { } letters ? Of(letters, winterOffset) : new(StampClock.Local, false, $"every time carries the letters {zone}: do they change with summer time");
            default:
                break;
        }

        var words = headers.Select(ClockWords.Of).FirstOrDefault(w => w is not null)
            ?? above.Where(line => TimeWords.AreIn(new HeaderWords(line)) || line.Contains("zone", StringComparison.OrdinalIgnoreCase)).Select(ClockWords.Of).FirstOrDefault(w => w is not null);
        return words is null ? null : Of(words, winterOffset);
    }

    public static Answer<StampMeaning>? Stamp(bool endsAt24, IReadOnlyList<string> headers)
    {
        if (endsAt24)
        {
            return new(StampMeaning.End, true, "24:00 ends a day");
        }

        var words = headers.Select(header => new HeaderWords(header + " " + (new HeaderWords(header).InBrackets ?? ""))).ToList();
        return words.Exists(w => w.HasAny("end", "ending", "ended", "ende", "fin")) ? new(StampMeaning.End, true, "the header says so")
            : words.Exists(w => w.HasAny("begin", "beginning", "start", "beginn", "inicio", "debut")) ? new(StampMeaning.Start, true, "the header says so")
            : null;
    }

    private static Answer<StampClock> Of(ClockWords words, TimeSpan? winterOffset) => words switch
    {
        { Clock: StampClock.Utc } => new(StampClock.Utc, true, $"the file says {words.Text}"),

        // Letters such as EST are often written all year without thinking of summer time.
        { Clock: { } clock } => new(clock, false, $"the file says {words.Text}, which may or may not change with summer time"),
        { OffsetH: { } hours } when winterOffset is { } winter && winter.TotalHours.Equals(hours) => new(StampClock.Standard, true, $"the file says {words.Text}, the site's standard time"),
        _ => new(StampClock.Standard, false, $"the file says {words.Text}: is that the site's standard time"),
    };
}
