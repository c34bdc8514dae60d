using System.Globalization;
using DailyAdjust.Core.Sites;
using DailyAdjust.Ledger.Records;

namespace DailyAdjust.Service.Sites;

/// <summary>What a sheet says of its own hour: that it is late, that mornings before it were slept over, that the machine's clock is in doubt.</summary>
internal static class LateWords
{
    public static string Late(SiteClock clock, DateTimeOffset due, DateTimeOffset now) =>
        string.Create(CultureInfo.InvariantCulture, $"This sheet was due at {clock.ToLocal(due):HH:mm} and was made at {clock.ToLocal(now):HH:mm}.");

    /// <param name="dates">At least one, ascending.</param>
    public static string Missed(IReadOnlyList<DateOnly> dates) => dates.Count == 1
        ? string.Create(CultureInfo.InvariantCulture, $"The morning of {dates[0]:yyyy-MM-dd} was slept over: no sheet was made for it.")
        : string.Create(CultureInfo.InvariantCulture, $"{dates.Count} mornings, {dates[0]:yyyy-MM-dd} to {dates[^1]:yyyy-MM-dd}, were slept over: no sheets were made for them.");

    /// <param name="clock">The site's.</param>
    /// <param name="ahead">A sheet as of an instant that has not come.</param>
    /// <param name="now">What the machine's clock shows, UTC.</param>
    public static string ClockDoubt(SiteClock clock, MorningRecord ahead, DateTimeOffset now) => string.Create(
        CultureInfo.InvariantCulture,
        $"This machine's clock shows {clock.ToLocal(now):yyyy-MM-dd HH:mm}, and sheet {ahead.Date:yyyy-MM-dd}/{ahead.Issue} was made when it showed {clock.ToLocal(ahead.AsOf):yyyy-MM-dd HH:mm}: it was wrong then, or it is now. Look at date, time and time zone of the machine.");
}
