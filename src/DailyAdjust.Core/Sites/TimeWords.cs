using System.Globalization;
using DailyAdjust.Core.Phrases;

namespace DailyAdjust.Core.Sites;

/// <summary>Instants on a site's clock as people say them.</summary>
public static class TimeWords
{
    /// <summary>"04:50 today", "23:10 yesterday", "04:40 tomorrow", "21:30 Fri 12 June".</summary>
    /// <param name="clock">The site's.</param>
    /// <param name="today">The date on which it is said.</param>
    /// <param name="instant">Any.</param>
    public static Phrase When(SiteClock clock, DateOnly today, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return $"{Clock(clock, instant)} {Day(clock.DateOf(instant), today)}";
    }

    /// <summary>"21:30 Wed 10 June", whatever day it is said on.</summary>
    public static Phrase Dated(SiteClock clock, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return $"{Clock(clock, instant)} {DateWords.Date(clock.DateOf(instant))}";
    }

    /// <summary>"today", "yesterday", "tomorrow", "Fri 12 June".</summary>
    public static Phrase Day(DateOnly date, DateOnly today) => (date.DayNumber - today.DayNumber) switch
    {
        0 => new("today"),
        -1 => new("yesterday"),
        1 => new("tomorrow"),
        _ => DateWords.Date(date),
    };

    /// <summary>"04:50".</summary>
    public static string Clock(SiteClock clock, DateTimeOffset instant)
    {
        ArgumentNullException.ThrowIfNull(clock);
        return clock.ToLocal(instant).ToString("HH:mm", CultureInfo.InvariantCulture);
    }
}
